import { expect, test } from "vitest";
import { ringDelay } from "../../../core/events/ring-delay.ts";

const rateHz = 1000;
const flight = { start: 104, end: 400 };

/** Empty from sample 100 on, with a decaying swing of 100 Hz that begins upwards there. */
function afterTakeoff(newtons: number): Float64Array {
  return Float64Array.from({ length: 400 }, (_, index) => {
    if (index < 100) return 30 * (100 - index);
    const since = (index - 100) / rateHz;
    return newtons * Math.exp(-since / 0.01) * Math.sin(2 * Math.PI * 100 * since);
  });
}

test("A plate that swings upwards as it is released may hold force up for half a period, seen from the swing below", () => {
  // 100 Hz: up for 5 ms, at the bottom about 7 ms after the release (a decay of 10 ms draws the bottom forward).
  const delay = ringDelay({ rateHz, force: afterTakeoff(40) }, 104, flight);
  expect(delay).toBe(2 * (107 - 104));
});

test("A plate that does not swing below its empty level delays nothing", () => {
  expect(ringDelay({ rateHz, force: afterTakeoff(0) }, 100, flight)).toBe(0);
  expect(ringDelay({ rateHz, force: afterTakeoff(2) }, 100, flight)).toBe(0);
});
