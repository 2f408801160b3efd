import { describe, expect, test } from "vitest";
import { integrate } from "../../../core/events/kinematics.ts";
import { bestHops, choiceDoubt, type Hop, hopsOf } from "../../../core/measures/hops.ts";
import { settingsWith } from "../../../core/settings/settings.ts";

const rateHz = 1000;
/** CHECKS C2 computes with g = 9.81. */
const gravity = 9.81;
const settings = settingsWith({ gravity });

function boutOf(massKg: number, contactsAndFlights: readonly (readonly [contact: number, flight: number])[]) {
  const seconds = contactsAndFlights.reduce((sum, [contact, flight]) => sum + contact + flight, 0.3);
  const signal = { rateHz, force: new Float64Array(Math.ceil(seconds * rateHz) + 1) };
  let at = 0.1;
  const contacts = contactsAndFlights.map(([contact, flight]) => {
    const touchdown = at * rateHz;
    at += contact + flight;
    return { touchdown, takeoff: touchdown + contact * rateHz };
  });
  const motion = integrate(signal, { start: 0, end: signal.force.length }, massKg * gravity, gravity);
  const hops = { contacts: [...contacts, { touchdown: at * rateHz }] };
  const jump = { test: "repeatedHops", motion, anchor: { kind: "flight" }, events: {}, contacts: [], hops } as const;
  return hopsOf(jump, settings);
}

describe("stiffness in hopping", () => {
  // CHECKS C2, computed there from the formula of Dalleau et al. 2004 (printed to two decimals).
  test.each([
    [70, 0.2, 0.4, 23397.17],
    [70, 0.18, 0.44, 27621.42],
    [62, 0.25, 0.45, 13607.56],
  ])("of %f kg, %f s on the plate and %f s in the air is %f N/m", (massKg, contact, flight, expected) => {
    const [hop] = boutOf(massKg, [[contact, flight]]);
    expect(Math.abs(hop!.hopStiffness! - expected)).toBeLessThan(0.006);
  });

  test("equals the sine model of Morin et al. 2005, in which gravity cancels", () => {
    const [massKg, contact, flight] = [70, 0.2, 0.4];
    const largest = massKg * gravity * (Math.PI / 2) * (flight / contact + 1);
    const fall = (largest * contact ** 2) / (massKg * Math.PI ** 2) - (gravity * contact ** 2) / 8;
    const [hop] = boutOf(massKg, [[contact, flight]]);
    expect(hop!.hopStiffness! / (largest / fall)).toBeCloseTo(1, 10);
  });
});

describe("the hops of a bout", () => {
  test("have height g·t²/8 of the flight that follows, over the contact before it", () => {
    const [first, second] = boutOf(70, [
      [0.2, 0.4],
      [0.25, 0.5],
    ]);
    expect(first?.jumpHeightFlightTime).toBeCloseTo((gravity * 0.4 ** 2) / 8, 12);
    expect(first?.reactiveStrengthIndex).toBeCloseTo((gravity * 0.4 ** 2) / 8 / 0.2, 10);
    expect(second?.contactIndex).toBe(2);
  });

  test("end before a bounce: a last flight shorter than six tenths of the usual one", () => {
    const regular = [
      [0.2, 0.4],
      [0.2, 0.4],
      [0.2, 0.4],
    ] as const;
    expect(boutOf(70, [...regular, [0.3, 0.15]])).toHaveLength(3);
    expect(boutOf(70, [...regular, [0.3, 0.3]])).toHaveLength(4);
  });
});

describe("the hops that stand for a bout", () => {
  const hop = (contactIndex: number, contactTime: number, reactiveStrengthIndex: number): Hop => ({
    contactIndex,
    contactTime,
    reactiveStrengthIndex,
    flightTime: 0.4,
    jumpHeightFlightTime: 0.2,
    hopStiffness: 20000,
  });
  const bout = [
    hop(1, 0.3, 2),
    hop(2, 0.24, 1),
    hop(3, 0.2, 1.4),
    hop(4, 0.2, 1.5),
    hop(5, 0.2, 1.3),
    hop(6, 0.2, 1.2),
    hop(7, 0.2, 1.1),
  ];
  test("are the best five by index among contacts below 250 ms on two legs", () => {
    expect(bestHops(bout, "both", settings)).toEqual([4, 3, 5, 6, 7]);
  });
  test("have no limit of contact time on one leg", () => {
    expect(bestHops(bout, "left", settings)).toEqual([1, 4, 3, 5, 6]);
  });
  test("are all there are where there are fewer", () => {
    expect(bestHops(bout.slice(0, 3), "both", settings)).toEqual([3, 2]);
    expect(bestHops(bout.slice(0, 1), "both", settings)).toEqual([]);
  });
});

describe("the doubt of which hops are best", () => {
  const hop = (contactIndex: number, reactiveStrengthIndex: number, hopStiffness: number): Hop => ({
    contactIndex,
    contactTime: 0.2,
    flightTime: 0.4,
    jumpHeightFlightTime: 0.2,
    reactiveStrengthIndex,
    hopStiffness,
  });
  const doubt = (spread: number, lastIndex: number) => {
    const hops = [hop(1, 1.2, 30000), hop(2, 1.1, 31000), hop(3, lastIndex, 34000)];
    const signal = { rateHz, force: new Float64Array(100) };
    const motion = integrate(signal, { start: 0, end: 100 }, 700, gravity);
    const jump = {
      test: "repeatedHops",
      motion,
      anchor: { kind: "flight" },
      events: {},
      contacts: [],
      spreads: { touchdown: spread, takeoff: spread },
    } as const;
    return choiceDoubt(
      { jump, limb: "left", usedHops: [1, 2] },
      hops,
      ({ hopStiffness = Number.NaN }) => hopStiffness,
      settings,
    );
  };

  test("is a rectangle as wide as an exchange would move their mean", () => {
    // Edges of 0.2 samples each leave 0.28 ms in both times: 0.0022 in either index, so that 1.1 and 1.099 may change
    // places and 1.2 and 1.099 may not: (34000 − 31000)/2 over √3.
    expect(doubt(0.2, 1.099)).toBeCloseTo(3000 / 2 / Math.sqrt(3), 6);
  });

  test("is none where the indices lie further apart than their edges are uncertain", () => {
    expect(doubt(0.2, 1.05)).toBe(0);
  });
});
