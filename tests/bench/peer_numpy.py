#!/usr/bin/python3
"""The verdict of the screening another way: whole arrays over the cycle's samples in NumPy, one
combination at a time and in batches. Prints combinations a second of both and of the program.

Usage: peer_numpy.py BUILD/bin/jw_bench        (needs python3-numpy)
"""

import json
import os
import subprocess
import sys
import tempfile
import time

import numpy as np

BENCH_FILTER = "^screening/10000$"


def run_program(bench, folder):
    """The problem as the program wrote it, and its own rate."""
    problem_file = os.path.join(folder, "problem.json")
    done = subprocess.run(
        [bench, "--benchmark_filter=" + BENCH_FILTER, "--benchmark_format=json"],
        env=dict(os.environ, JW_SCREENING_OUT=problem_file), stdout=subprocess.PIPE, check=True)
    rate = json.loads(done.stdout)["benchmarks"][0]["items_per_second"]
    text = open(problem_file, encoding="utf-8").read().replace("nan", "NaN").replace("inf", "Infinity")
    return json.loads(text), rate


class Problem:
    def __init__(self, data):
        for key in ("weight", "torque", "speed", "acceleration"):
            setattr(self, key, np.array(data[key]))
        power = self.torque * self.speed
        efficiency = np.where(power > 0, 1 / data["driving"], np.where(power < 0, data["backdriving"], 1))
        self.reflected = self.torque * efficiency
        self.belt_inertia, self.behind = data["inertia"], data["behind"]
        self.ratios = np.array(data["ratios"])
        self.motors = np.array(data["motors"], dtype=float)
        self.survivors = data["survivors"]

    def holds(self, ratio, motor):
        """One combination, or many: `ratio` and the columns of `motor` as columns over the samples."""
        (inertia, ratio_max, speed_max, per_amp, drag0, drag1, square_max, peak_max, hot_amp, hot_loss,
         hot_drag0, hot_drag1, housing, winding, rise, voltage, resistance, emf, reactance) = motor
        speed = ratio * self.speed
        torque = self.reflected / ratio + (self.belt_inertia + inertia) * ratio * self.acceleration
        current = (torque + drag0 * np.sign(speed) + drag1 * speed) / per_amp
        mean_square = (self.weight * torque * torque).sum(axis=-1, keepdims=True)
        speed_rms = np.sqrt((self.weight * speed * speed).sum(axis=-1, keepdims=True))
        hot_drag = hot_drag0 + hot_drag1 * speed_rms
        allowed = np.maximum(0, (rise - hot_drag * speed_rms * housing) / (winding + housing))
        lasting = np.maximum(0, hot_amp * np.sqrt(allowed / hot_loss) - hot_drag)
        drop = resistance * current + emf * speed
        cross = reactance * speed * current
        ok = np.abs(speed).max(axis=-1, keepdims=True) <= speed_max
        ok &= ~((self.behind / ratio**2 + self.belt_inertia) > ratio_max * inertia)
        ok &= mean_square <= lasting * lasting
        ok &= ~((self.weight * current * current).sum(axis=-1, keepdims=True) > square_max)
        ok &= ~(np.abs(current).max(axis=-1, keepdims=True) > peak_max)
        ok &= (drop * drop + cross * cross).max(axis=-1, keepdims=True) <= voltage * voltage
        return ok


def one_at_a_time(problem, seconds):
    start, count, held = time.process_time(), 0, 0
    for ratio in problem.ratios:
        for motor in problem.motors:
            held += bool(problem.holds(ratio, motor)[0])
            count += 1
            if time.process_time() - start > seconds:
                return count / (time.process_time() - start)
    return count / (time.process_time() - start)


def batched(problem, batch):
    """Every combination; survivors and rate."""
    columns = problem.motors.T[:, :, None]
    start, held = time.process_time(), 0
    for ratio in problem.ratios:
        for first in range(0, len(problem.motors), batch):
            held += int(problem.holds(ratio, columns[:, first:first + batch]).sum())
    count = len(problem.ratios) * len(problem.motors)
    return held, count / (time.process_time() - start)


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    if "MALLOC_TRIM_THRESHOLD_" not in os.environ:  # or large arrays go back to the system each time
        settings = dict(os.environ, MALLOC_TRIM_THRESHOLD_="1000000000", MALLOC_MMAP_THRESHOLD_="1000000000")
        os.execve(sys.executable, [sys.executable] + sys.argv, settings)
    with tempfile.TemporaryDirectory() as folder:
        data, program = run_program(sys.argv[1], folder)
    problem = Problem(data)
    single = one_at_a_time(problem, 5)
    results = {size: batched(problem, size) for size in (2, 8, 34)}
    size = max(results, key=lambda k: results[k][1])
    held, batch = results[size]
    print(f"samples of the cycle          {len(problem.weight):>14,}")
    print(f"program, one core             {program:>14,.0f} combinations/s")
    print(f"NumPy, one at a time          {single:>14,.0f} combinations/s   ratio {program / single:,.0f}")
    print(f"NumPy, in batches of {size:<9}{batch:>14,.0f} combinations/s   ratio {program / batch:,.0f}")
    print(f"survivors: program {problem.survivors}, NumPy over every sample {held}")
    if held > problem.survivors:
        sys.exit("NumPy accepts combinations that the program rejected")


if __name__ == "__main__":
    main()
