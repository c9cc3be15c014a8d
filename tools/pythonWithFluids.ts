import { spawnSync } from "node:child_process";

/** The first Python that can import the library fluids, undefined when none can. */
export function pythonWithFluids(): string | undefined {
  // A distribution's package serves the distribution's own Python, which need not be the first on PATH.
  const candidates = [process.env.PYTHON, "/usr/bin/python3", "python3"];
  return candidates.find(
    (python): python is string =>
      python !== undefined && spawnSync(python, ["-c", "import fluids"], { stdio: "ignore" }).status === 0,
  );
}
