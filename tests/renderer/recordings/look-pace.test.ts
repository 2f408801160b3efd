import { expect, test } from "vitest";
import { nextLookMilliseconds } from "../../../renderer/recordings/look-pace.ts";

test("the screen looks again soon while that costs little, and leaves the host four fifths of its time when it costs much", () => {
  expect(nextLookMilliseconds(0)).toBe(400);
  expect(nextLookMilliseconds(90)).toBe(400);
  expect(nextLookMilliseconds(900)).toBe(3600);
});
