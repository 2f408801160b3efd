import { integrate } from "../../../core/events/kinematics.ts";
import type { Hop } from "../../../core/measures/hops.ts";
import { hopsOf } from "../../../core/measures/hops.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { CheckGroup, PublishedCheck } from "./published-check.ts";

const dalleau =
  "Dalleau et al. 2004, Int J Sports Med 25(3):170–176 (formula from memory; no published example was found), worked out by hand";
const morin =
  "Morin et al. 2005, J Appl Biomech 21(2):167–180 (formula from memory): algebraically the same for hopping, worked out here";

/** Mass in kg, contact and flight in s, stiffness in N/m. */
const rows = [
  [70, 0.2, 0.4, 23397.17],
  [70, 0.18, 0.44, 27621.42],
  [62, 0.25, 0.45, 13607.56],
] as const;

/** What the program makes of a contact and the flight after it. */
function hopOf(massKg: number, contactSeconds: number, flightSeconds: number): Hop {
  const rateHz = 1000;
  const signal = { rateHz, force: new Float64Array(2) };
  const motion = integrate(signal, { start: 0, end: 2 }, massKg * defaultSettings.gravity, defaultSettings.gravity);
  const takeoff = contactSeconds * rateHz;
  const touchdown = takeoff + flightSeconds * rateHz;
  const [hop] = hopsOf(
    {
      test: "repeatedHops",
      motion,
      anchor: { kind: "flight" },
      events: {},
      contacts: [],
      hops: { contacts: [{ touchdown: 0, takeoff }, { touchdown }] },
    },
    defaultSettings,
  );
  if (hop === undefined) throw new RangeError("A contact with a flight after it is a hop.");
  return hop;
}

/** Fmax / Δy of a half sine of force; the result does not depend on gravity. */
function halfSineStiffness(massKg: number, contactSeconds: number, flightSeconds: number): number {
  const gravity = 9.81;
  const largest = ((massKg * gravity * Math.PI) / 2) * (flightSeconds / contactSeconds + 1);
  const descent = (largest * contactSeconds ** 2) / (massKg * Math.PI ** 2) - (gravity * contactSeconds ** 2) / 8;
  return largest / descent;
}

function stiffnessChecks([massKg, contact, flight, expected]: (typeof rows)[number]): PublishedCheck[] {
  const hop = `${massKg} kg, contact ${contact.toFixed(2)} s, flight ${flight.toFixed(2)} s`;
  const ours = (): number => hopOf(massKg, contact, flight).hopStiffness ?? Number.NaN;
  return [
    { check: `stiffness of a hop, ${hop}`, source: dalleau, expected, unit: "N/m", tolerance: 0.005, ours },
    {
      check: `the same hop as largest force over descent of a half sine, ${hop}`,
      source: morin,
      expected: halfSineStiffness(massKg, contact, flight),
      unit: "N/m",
      tolerance: 1e-6,
      ours,
    },
  ];
}

export const hopChecks: CheckGroup = {
  subject: "Hops",
  checks: [
    ...rows.flatMap(stiffnessChecks),
    {
      check: "reactive strength index as height over contact time: contact 0.209 s, flight 0.500 s",
      source: "Southey et al. 2024, Kinesiology 56(2), times read; g·t²/8 over contact time worked out by hand",
      expected: 1.47,
      unit: "m/s",
      tolerance: 0.005,
      ours: () => hopOf(70, 0.209, 0.5).reactiveStrengthIndex,
    },
    {
      check: "the same, ten-to-five hops: contact 0.180 s, flight 0.444 s",
      source: "Southey et al. 2024, Kinesiology 56(2), times read; g·t²/8 over contact time worked out by hand",
      expected: 1.34,
      unit: "m/s",
      tolerance: 0.005,
      ours: () => hopOf(70, 0.18, 0.444).reactiveStrengthIndex,
    },
  ],
};
