import { normalGravity } from "../../../core/ground/gravity.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { CheckGroup } from "./published-check.ts";

const formula = "Somigliana's formula with the constants of WGS 84; values recomputed from them";
const table = "tabulated classroom values, read; the table itself is good to 0.0012 m/s²";

/** Latitude in degrees and normal gravity at sea level, m/s². */
const seaLevel = [
  [0, 9.7803253359],
  [30, 9.7932472692],
  [45, 9.8061977694],
  [60, 9.8191769531],
  [90, 9.8321849379],
  [-45, 9.8061977694],
] as const;

/** Place, latitude in degrees, altitude in metres, gravity in m/s². */
const places = [
  ["the pole", 90, 0, 9.832],
  ["Stockholm", 59, 45, 9.818],
  ["Brussels", 51, 102, 9.811],
  ["Chicago", 42, 182, 9.803],
  ["Denver", 40, 1638, 9.796],
  ["the Canal Zone", 9, 6, 9.782],
] as const;

export const gravityChecks: CheckGroup = {
  subject: "Gravity",
  checks: [
    {
      check: "standard acceleration of gravity, the default setting",
      source: "3rd General Conference on Weights and Measures, 1901",
      expected: 9.80665,
      unit: "m/s2",
      tolerance: 0,
      ours: () => defaultSettings.gravity,
    },
    ...seaLevel.map(([latitude, expected]) => ({
      check: `normal gravity at ${latitude}° and sea level`,
      source: formula,
      expected,
      unit: "m/s2",
      tolerance: 1e-10,
      ours: () => normalGravity(latitude, 0),
    })),
    ...places.map(([place, latitude, altitude, expected]) => ({
      check: `gravity at ${place}, ${latitude}° and ${altitude} m`,
      source: table,
      expected,
      unit: "m/s2",
      tolerance: 0.0012,
      ours: () => normalGravity(latitude, altitude),
    })),
    {
      check: "gravity measured in Gaithersburg, 39.13° and 132 m (coordinates from memory), to a part in 10,000",
      source: "Tate 1966, J Res NBS 70C(2), read",
      expected: 9.801018,
      unit: "m/s2",
      tolerance: 0.00098,
      ours: () => normalGravity(39.13, 132),
    },
  ],
};
