"""Reference values for tests/published/combustion-uncertainty-package.test.ts: first-order propagation by another package.
Run: python3 uncertainty.py > uncertainty-python.json   (python3-uncertainties from Debian)"""
import datetime, json, platform
import uncertainties
from uncertainties import ufloat
from uncertainties.umath import exp, sqrt

def pair(x):
    return [x.nominal_value, x.std_dev]

o2, co, flue, air = ufloat(5, 0.17), ufloat(87, 12), ufloat(200, 1.5), ufloat(20, 1)
k = 0.9

# 1. Air-free CO of the trade's example, 87 ppm at 5 %: O2 stands in it once, CO once.
air_free = co * 20.9 / (20.9 - o2)
# 2. Flue loss by Siegert's formula, natural gas: O2 and both temperatures.
siegert = (flue - air) * (0.66 / (21 - o2) + 0.009)
# 3. Excess air, lambda and what depends on both: one O2 that enters by three ways.
excess = k * o2 / (20.95 - o2)
chained = (1 + excess) * air_free / (1 + sqrt(excess)) - exp(-excess) * o2
# 4. A saving, 1 - found/left, of two losses that share one analyzer's bias.
bias = ufloat(0, 0.13)
found, left = ufloat(7, 0.1) + bias, ufloat(4, 0.1) + bias
loss = lambda x, t: (t - 20) * (0.66 / (21 - x) + 0.009)
saving = 1 - (100 - loss(found, 220)) / (100 - loss(left, 210))

print(json.dumps({
    "made": f"Python {platform.python_version()} uncertainties {uncertainties.__version__} {datetime.date.today()}",
    "air_free": pair(air_free), "siegert": pair(siegert), "chained": pair(chained), "saving": pair(saving),
}, indent=2))
