"""Writes compressed.json: FLAC, Ogg Vorbis and MP3 files by libsndfile, and the samples that it reads from them again.

Needs the package soundfile 0.14, which holds libsndfile 1.2.2. Run: python3 compressed.py
"""

import base64
import io
import json
from pathlib import Path

import numpy as np
import soundfile

RATE, FRAMES = 44_100, 40_000
t = np.arange(FRAMES) / RATE
sound = np.stack([0.5 * np.sin(2 * np.pi * 60 * t), 0.3 * np.sin(2 * np.pi * 97 * t + 1)], axis=1)
places = list(range(0, FRAMES, 997))


def made(name, subtype, **how):
    out = io.BytesIO()
    soundfile.write(out, sound, RATE, format=name, subtype=subtype, **how)
    raw = out.getvalue()
    back, rate = soundfile.read(io.BytesIO(raw))
    assert rate == RATE
    return {
        "name": name,
        "base64": base64.b64encode(raw).decode(),
        "frames": len(back),
        "samples": np.round(back[places], 9).T.tolist(),
    }


files = [made("FLAC", "PCM_16"), made("FLAC", "PCM_24"), made("OGG", "VORBIS"), made("MP3", "MPEG_LAYER_III")]
lines = ",\n  ".join(json.dumps(file) for file in files)
Path(__file__).with_name("compressed.json").write_text(f'{{\n "sampleRate": {RATE},\n "places": {places},\n "files": [\n  {lines}\n ]\n}}\n')
print([(file["name"], file["frames"], len(file["base64"])) for file in files])
