import { expect, test } from "vitest";
import { ringDelay } from "../../../core/events/ring-delay.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";

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
  // 100 Hz: up for 5 ms, above 10 N until 4 ms, lowest over 2 ms about 7.5 ms after the release.
  const delay = ringDelay({ rateHz, force: afterTakeoff(40) }, 104.6, flight, defaultSettings);
  expect(delay).toBe(2 * (107.5 - 104));
});

test("A plate that does not swing below its empty level delays nothing", () => {
  expect(ringDelay({ rateHz, force: afterTakeoff(0) }, 100, flight, defaultSettings)).toBe(0);
  expect(ringDelay({ rateHz, force: afterTakeoff(2) }, 100, flight, defaultSettings)).toBe(0);
});
