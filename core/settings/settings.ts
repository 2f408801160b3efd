import { sha256Hex } from "../ground/sha256.ts";
import type { ChoiceSetting, NumberSetting } from "./setting-entry.ts";
import { settingsOfEdges } from "./settings-of-edges.ts";
import { settingsOfMeasures } from "./settings-of-measures.ts";
import { settingsOfOnset } from "./settings-of-onset.ts";
import { settingsOfPlates } from "./settings-of-plates.ts";
import { settingsOfProtocol } from "./settings-of-protocol.ts";
import { settingsOfReading } from "./settings-of-reading.ts";
import { settingsOfSamples } from "./settings-of-samples.ts";
import { settingsOfSides } from "./settings-of-sides.ts";
import { settingsOfTops } from "./settings-of-tops.ts";
import { settingsOfTrials } from "./settings-of-trials.ts";
import { settingsOfUnits } from "./settings-of-units.ts";
import { settingsOfWeighing } from "./settings-of-weighing.ts";
import { settingsOfWeight } from "./settings-of-weight.ts";

/**
 * The one place for every number of the methods that is a choice (METHODS §11). Names are public. Physical facts
 * (rate, unit, mass, side) are never here: they are asked for.
 */
export const settingsCatalogue = {
  ...settingsOfReading,
  ...settingsOfUnits,
  ...settingsOfWeighing,
  ...settingsOfTrials,
  ...settingsOfPlates,
  ...settingsOfSamples,
  ...settingsOfTops,
  ...settingsOfEdges,
  ...settingsOfOnset,
  ...settingsOfMeasures,
  ...settingsOfWeight,
  ...settingsOfSides,
  ...settingsOfProtocol,
} as const satisfies Readonly<Record<string, NumberSetting | ChoiceSetting>>;

type Catalogue = typeof settingsCatalogue;

export type SettingName = keyof Catalogue;

/** All settings with their values; one document with one hash. */
export type Settings = {
  readonly [Name in SettingName]: Catalogue[Name] extends NumberSetting ? number : string;
};

/** The values as they ship. */
export const defaultSettings: Settings = Object.fromEntries(
  Object.entries(settingsCatalogue).map(([name, entry]) => [name, entry.default]),
) as Settings;

/**
 * Defaults with some values replaced.
 * @throws RangeError naming the setting, when a value lies outside its catalogue range. Callers check user input first.
 */
export function settingsWith(changes: Partial<Settings>): Settings {
  for (const [name, value] of Object.entries(changes)) {
    const entry: NumberSetting | ChoiceSetting | undefined = settingsCatalogue[name as SettingName];
    if (entry === undefined) throw new RangeError(`There is no setting called "${name}".`);
    const allowed =
      "choices" in entry
        ? typeof value === "string" && entry.choices.includes(value)
        : typeof value === "number" && value >= entry.minimum && value <= entry.maximum;
    if (!allowed) throw new RangeError(`Setting ${name} cannot be ${value}.`);
  }
  return { ...defaultSettings, ...changes };
}

/** SHA-256 of the settings in catalogue order, so that equal settings have equal hashes on every machine. */
export function settingsHash(settings: Settings): string {
  const ordered = Object.fromEntries(
    Object.keys(settingsCatalogue).map((name) => [name, settings[name as SettingName]]),
  );
  return sha256Hex(JSON.stringify(ordered));
}
