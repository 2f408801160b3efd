import { describe, expect, it } from "vitest";
import { createRandom } from "../../../core/simulate/random.ts";
import { drawSway, swayDisplacement } from "../../../core/simulate/sway.ts";

const seeds = Array.from({ length: 60 }, (_, index) => index);
const relative = 1e-12;

describe("sway", () => {
  it("lies between 0.2 and 6 Hz and falls at least with the square of frequency", () => {
    for (const seed of seeds) {
      const { components } = drawSway(createRandom(seed), 0.001);
      for (const [index, component] of components.entries()) {
        expect(component.frequencyHz).toBeGreaterThanOrEqual(0.2);
        expect(component.frequencyHz).toBeLessThanOrEqual(6);
        const previous = components[index - 1];
        if (previous === undefined) continue;
        const squareLaw = previous.amplitudeMetres * (previous.frequencyHz / component.frequencyHz) ** 2;
        expect(component.amplitudeMetres).toBeLessThanOrEqual(squareLaw * (1 + relative));
      }
    }
  });

  it("has the wanted displacement RMS and a velocity RMS between 1 and 6 mm/s", () => {
    for (const seed of seeds) {
      const wanted = 0.0002 + (0.0018 * seed) / 59;
      const sway = drawSway(createRandom(seed), wanted);
      // By hand: a sum of sinusoids of different frequencies has the mean square Σ A²/2.
      const rms = Math.sqrt(sway.components.reduce((sum, each) => sum + each.amplitudeMetres ** 2 / 2, 0));
      expect(Math.abs(rms / wanted - 1)).toBeLessThan(relative);
      expect(sway.velocityRmsMetresPerSecond).toBeGreaterThanOrEqual(0.001);
      expect(sway.velocityRmsMetresPerSecond).toBeLessThanOrEqual(0.006);
    }
  });

  it("measured over ten minutes has the RMS it states", () => {
    const sway = drawSway(createRandom(3), 0.001);
    const { position, velocity } = swayDisplacement(sway);
    const times = Array.from({ length: 60_000 }, (_, index) => index / 100);
    const rms = (of: (time: number) => number): number =>
      Math.sqrt(times.reduce((sum, time) => sum + of(time) ** 2, 0) / times.length);
    // Incomplete periods and beats leave under 2 % over 600 s.
    expect(Math.abs(rms(position) / 0.001 - 1)).toBeLessThan(0.02);
    expect(Math.abs(rms(velocity) / sway.velocityRmsMetresPerSecond - 1)).toBeLessThan(0.02);
  });

  it("is refused outside 0.2 to 2 mm", () => {
    expect(() => drawSway(createRandom(1), 0.0001)).toThrow(RangeError);
    expect(() => drawSway(createRandom(1), 0.0021)).toThrow(RangeError);
  });

  it("gives velocity and acceleration that are the derivatives of its position, gate included", () => {
    const gate = { fadeStart: 2, fadeSeconds: 0.6, returnStart: 3.5, returnSeconds: 0.5 };
    const { position, velocity, acceleration } = swayDisplacement(drawSway(createRandom(5), 0.0015), gate);
    const step = 1e-4;
    for (let time = 1.5; time < 4.5; time += 0.0137) {
      const slope = (position(time + step) - position(time - step)) / (2 * step);
      const bend = (velocity(time + step) - velocity(time - step)) / (2 * step);
      // Central differences: error step²/6 times a third derivative below 100 m/s³.
      expect(Math.abs(velocity(time) - slope)).toBeLessThan(2e-7);
      expect(Math.abs(acceleration(time) - bend)).toBeLessThan(2e-6);
    }
  });

  it("is exactly zero between its gates", () => {
    const gate = { fadeStart: 2, fadeSeconds: 0.6, returnStart: 3.5, returnSeconds: 0.5 };
    const { position, velocity, acceleration } = swayDisplacement(drawSway(createRandom(5), 0.0015), gate);
    for (const time of [2.6, 3, 3.5]) {
      expect([position(time), velocity(time), acceleration(time)]).toEqual([0, 0, 0]);
    }
  });
});
