import { describe, expect, test } from "vitest";
import { integrate, positionAt, velocityAt } from "../../../core/events/kinematics.ts";
import { integrateForce, maximumForce } from "../../../core/trial/force-signal.ts";

// Forces simple enough to integrate by hand: W = 700 N, g = 10 m/s², so m = 70 kg; sampled at 1000 Hz.
const weightNewtons = 700;
const gravity = 10;
const massKg = 70;
const rateHz = 1000;
const tolerance = 1e-10;

function motionOf(forceAtSeconds: (seconds: number) => number, seconds: number) {
  const count = Math.round(seconds * rateHz) + 1;
  const force = Float64Array.from({ length: count }, (_, index) => forceAtSeconds(index / rateHz));
  const signal = { rateHz, force };
  return { signal, motion: integrate(signal, { start: 0, end: count }, weightNewtons, gravity) };
}

describe("constant net force of 350 N for 0.4 s", () => {
  const { signal, motion } = motionOf(() => 1050, 0.4);
  test("gives v = F·t/m = 2 m/s and x = F·t²/2m = 0.4 m", () => {
    expect(Math.abs(velocityAt(motion, 400) - 2)).toBeLessThan(tolerance);
    expect(Math.abs(positionAt(motion, 400) - 0.4)).toBeLessThan(tolerance);
  });
  test("gives the same between samples: v(0.1234 s) = 0.617 m/s", () => {
    expect(Math.abs(velocityAt(motion, 123.4) - 0.617)).toBeLessThan(tolerance);
    expect(Math.abs(positionAt(motion, 123.4) - (5 * 0.1234 ** 2) / 2)).toBeLessThan(tolerance);
  });
  test("has a gross impulse of 1050 N × 0.2345 s between fractional samples", () => {
    expect(Math.abs(integrateForce(signal, 10.25, 244.75) - 1050 * 0.2345)).toBeLessThan(tolerance);
  });
});

describe("triangular net force rising to 1400 N at 0.2 s and back to zero at 0.4 s", () => {
  const peak = 1400;
  const net = (t: number) => (t <= 0.2 ? (peak * t) / 0.2 : (peak * (0.4 - t)) / 0.2);
  const { signal, motion } = motionOf((t) => weightNewtons + net(t), 0.4);
  test("gives v = peak·0.2/m = 4 m/s at the end and half of it at the peak", () => {
    expect(Math.abs(velocityAt(motion, 400) - (peak * 0.2) / massKg)).toBeLessThan(tolerance);
    expect(Math.abs(velocityAt(motion, 200) - (peak * 0.1) / massKg)).toBeLessThan(tolerance);
  });
  test("gives x(0.2 s) = peak·0.2²/6m", () => {
    expect(Math.abs(positionAt(motion, 200) - (peak * 0.04) / 6 / massKg)).toBeLessThan(tolerance);
  });
  test("has its largest force at 0.2 s", () => {
    expect(maximumForce(signal, 0, 400)).toEqual({ newtons: weightNewtons + peak, sample: 200 });
  });
});

describe("a rectangular pulse of 1400 N net for 0.1 s after 0.1 s of standing", () => {
  // The edges of the pulse are one sample wide, because samples are joined by straight lines.
  const { motion } = motionOf((t) => weightNewtons + (t > 0.0995 && t < 0.2005 ? 1400 : 0), 0.5);
  test("gives v = 1400 N × 0.101 s / 70 kg, edges included, and keeps it", () => {
    const velocity = (1400 * 0.101) / massKg;
    expect(Math.abs(velocityAt(motion, 201) - velocity)).toBeLessThan(tolerance);
    expect(Math.abs(velocityAt(motion, 500) - velocity)).toBeLessThan(tolerance);
  });
  test("gives x growing by v·t afterwards", () => {
    const velocity = (1400 * 0.101) / massKg;
    const grown = positionAt(motion, 500) - positionAt(motion, 300);
    expect(Math.abs(grown - velocity * 0.2)).toBeLessThan(tolerance);
  });
});
