import { expect, test } from "vitest";
import {
  defaultSettings,
  type SettingName,
  settingsCatalogue,
  settingsHash,
  settingsWith,
} from "../../../core/settings/settings.ts";

const entries = Object.entries(settingsCatalogue) as [SettingName, (typeof settingsCatalogue)[SettingName]][];

test.each(entries)("another value of %s gives another hash", (name, entry) => {
  const other =
    "choices" in entry
      ? entry.choices.find((choice) => choice !== entry.default)
      : entry.default === entry.minimum
        ? entry.maximum
        : entry.minimum;
  expect(other).toBeDefined();
  const changed = settingsWith({ [name]: other });
  expect(settingsHash(changed)).not.toBe(settingsHash(defaultSettings));
});

test("the same values give the same hash, whatever the order they were given in", () => {
  const turned = Object.fromEntries(Object.entries(defaultSettings).reverse()) as typeof defaultSettings;
  expect(settingsHash(turned)).toBe(settingsHash(defaultSettings));
});
