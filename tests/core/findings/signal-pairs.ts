import { addSpikes, holdSamples, smoothForce } from "../../../core/simulate/recording-faults.ts";
import { jumpOf, saidJump, written } from "../simulate/faulty/faulty-trial.ts";
import { around, type FindingPairs, kindPair, seed } from "./pair.ts";

/** What the force signal itself gives away. */
export const signalPairs: FindingPairs = {
  spikes: around(
    (newtons: number) => written(addSpikes(jumpOf(seed), 0, [{ at: 0.9, newtons }]), saidJump),
    // 100 N away from its neighbours, which differ by the noise.
    120,
    80,
  ),
  "samples-lost": kindPair("samples-lost-as-zero"),
  "samples-held": around(
    (samples: number) => {
      const jump = jumpOf(seed);
      const from = jump.truth.events.lowestPosition;
      return written(holdSamples(jump, from, from + samples / 1000), saidJump);
    },
    9,
    3,
  ),
  smoothed: around((seconds: number) => written(smoothForce(jumpOf(seed), seconds), saidJump), 0.06, 0.01),
  "rate-not-real": kindPair("rate-raised-by-repeating"),
  "sign-changes": kindPair("sign-turned-after-landing"),
};
