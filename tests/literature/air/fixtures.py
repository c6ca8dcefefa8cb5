"""Writes fixtures.json: air by CoolProp, a program that shares no formula with the air floor.

Humid air: real-gas mixture of virial equations. Dry air: reference equation of state, and the transport equations of
Lemmon and Jacobsen 2004. Run: pip install CoolProp==8.0.0; python3 fixtures.py
"""

import json
from pathlib import Path

import CoolProp
from CoolProp.CoolProp import PropsSI
from CoolProp.HumidAirProp import HAPropsSI


def moist(states):
    """Per kilogram of moist air, not of dry air: outputs ending in _ha. cp, like all others, at constant vapour."""
    given = {"temperature": [], "pressure": [], "humidity": []}
    outputs = {"vapourFraction": "psi_w", "specificVolume": "Vha", "speedOfSound": "speed_of_sound", "viscosity": "mu",
               "thermalConductivity": "k", "specificHeat": "cp_ha"}
    table = {name: [] for name in outputs}
    for t, p, h in states:
        for name, value in zip(given, (t, p, h)):
            given[name].append(value)
        for name, output in outputs.items():
            table[name].append(HAPropsSI(output, "T", t + 273.15, "P", p, "R", h))
    density = [1 / v for v in table.pop("specificVolume")]
    gamma = [rho * c * c / p for rho, c, p in zip(density, table["speedOfSound"], given["pressure"])]
    return given | {"density": density} | table | {"heatCapacityRatio": gamma}


def dry(temperatures):
    read = lambda output: [PropsSI(output, "T", t + 273.15, "P", 101325, "Air") for t in temperatures]
    return {"temperature": temperatures, "speedOfSound": read("A"), "viscosity": read("V"),
            "thermalConductivity": read("L"), "specificHeat": read("C"), "prandtlNumber": read("PRANDTL")}


def gas(names):
    """Gases at 20 °C, 101325 Pa: reference equations of state and of transport."""
    read = lambda output: [PropsSI(output, "T", 293.15, "P", 101325, name) for name in names]
    ratio = [cp / cv for cp, cv in zip(read("CPMASS"), read("CVMASS"))]
    return {"name": names, "density": read("D"), "speedOfSound": read("A"), "viscosity": read("V"),
            "thermalConductivity": read("L"), "specificHeat": read("C"), "prandtlNumber": read("PRANDTL"),
            "heatCapacityRatio": ratio}


fixtures = {
    "program": f"CoolProp {CoolProp.__version__}",
    # The range of the density formula: middle, corners.
    "density": moist([(20, 101325, 0.5), (15, 60000, 0), (15, 110000, 1), (27, 60000, 1), (27, 110000, 0), (0, 101325, 0.5),
                      (40, 101325, 0.5)]),
    # The range of the sound-speed formula: middle, corners.
    "speedOfSound": moist([(20, 101325, 0.5), (15, 90000, 0.5), (0, 75000, 0), (0, 102000, 1), (30, 75000, 1),
                           (30, 102000, 0)]),
    "dry": dry([-60, -20, 0, 20, 40, 60]),
    "dryStandardRange": dry([-20, 0, 20, 50]),
    "dryAcoustic": dry([0, 15, 30]),
    "gas": gas(["Helium", "Air", "CarbonDioxide"]),
    "moistTransport": moist([(0, 101325, 1), (20, 101325, 0.5), (30, 101325, 1), (40, 101325, 1)]),
}
Path(__file__).with_name("fixtures.json").write_text(json.dumps(fixtures, indent=1) + "\n")
