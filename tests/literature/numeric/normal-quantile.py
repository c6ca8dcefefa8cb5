"""Quantiles of the standard normal distribution by a general-purpose numeric library."""
import json
from pathlib import Path

from scipy.stats import norm

rows = [1e-300, 1e-20, 1e-9, 1e-4, 0.01, 0.074, 0.0751, 0.3, 0.7, 0.93, 0.975, 0.9999, 1 - 1e-12]
out = {"u": rows, "z": [float(norm.ppf(u)) for u in rows]}
Path(__file__).with_suffix(".json").write_text(json.dumps(out) + "\n")
