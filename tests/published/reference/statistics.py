"""Reference values for tests/published/statistics-first-passage.test.ts.
Run: python3 statistics.py > statistics-scipy.json   (numpy and scipy from Debian)"""
import datetime, json, sys
import numpy, scipy
from scipy.stats import invgauss, norm

one = []
for distance in (0.3, 1.0, 2.5):
    for drift in (0.05, 0.35, 1.0, 4.0):
        for diffusion in (0.1, 0.35, 1.0):
            for time in (0.25, 1.0, 5.0):
                # First passage of a drifting Brownian motion: inverse Gaussian, mean a/v, shape (a/s)^2.
                mean, shape = distance / drift, (distance / diffusion) ** 2
                one.append([distance, drift, diffusion, time, float(invgauss.cdf(time, mean / shape, scale=shape))])

# Two barriers by a million simulated paths; between steps the Brownian bridge's chance of having touched is drawn too.
rng = numpy.random.default_rng(20261125)
two = []
for above, below, drift, diffusion, time in [
    (1.0, 1.0, 0.35, 0.35, 2.0), (0.5, 1.0, 0.35, 0.35, 1.0), (0.3, 0.2, -0.1, 0.2, 1.5), (1.0, 0.4, -0.3, 0.3, 1.0),
    (0.6, 0.6, 0.0, 0.5, 1.0), (0.25, 0.25, 0.1, 0.3, 0.5), (2.0, 0.5, 0.8, 0.6, 2.0), (0.4, 0.4, 1.0, 0.05, 0.3),
]:
    paths, steps = 1_000_000, 60
    dt = time / steps
    x = numpy.zeros(paths); alive = numpy.ones(paths, bool)
    for _ in range(steps):
        y = x + drift * dt + diffusion * numpy.sqrt(dt) * rng.standard_normal(paths)
        up = numpy.exp(-2 * numpy.maximum(above - x, 0) * numpy.maximum(above - y, 0) / (diffusion**2 * dt))
        down = numpy.exp(-2 * numpy.maximum(below + x, 0) * numpy.maximum(below + y, 0) / (diffusion**2 * dt))
        alive &= (y < above) & (y > -below) & (rng.random(paths) > up) & (rng.random(paths) > down)
        x = y
    two.append([above, below, drift, diffusion, time, 1 - float(alive.mean())])

z = [0, 0.1, 0.4, 0.6, 0.7, 1, 2, 3.9, 5, 5.7, 8, 15, 40]
made = f"Python {sys.version.split()[0]} numpy {numpy.__version__} scipy {scipy.__version__} {datetime.date.today()}"
json.dump({"made": made, "one_barrier": one, "two_barriers": two, "z": z,
           "scaled_upper_tail": [float(0.5 * scipy.special.erfcx(v / numpy.sqrt(2))) for v in z]}, sys.stdout, indent=0)
