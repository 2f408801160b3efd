import { describe, expect, test } from "vitest";
import { engineVersion } from "../../../core/ground/version.ts";
import type { SessionResult } from "../../../core/result/session-result.ts";
import { defaultSettings, type Settings, settingsHash, settingsWith } from "../../../core/settings/settings.ts";
import { methodReferences } from "../../../core/sheet/method-references.ts";
import { methodsParagraph } from "../../../core/sheet/methods-paragraph.ts";
import {
  bothInvolvedSession,
  exampleSession,
  exampleTrial,
  exampleTrials,
  healthySession,
  stoppedSession,
} from "./example-session.ts";

const standard = methodsParagraph(exampleSession(), defaultSettings);

describe("the methods paragraph", () => {
  // Each changed setting must change its own words: the new figure appears, the old one is gone.
  const changes: readonly (readonly [Partial<Settings>, string, string])[] = [
    [{ weighingSeconds: 2 }, "mean force over 2 s of quiet standing", "mean force over 1 s of quiet standing"],
    [
      { weighingAlike: 1.2 },
      "at most 1.2 times its standard deviation",
      `at most ${defaultSettings.weighingAlike} times its standard deviation`,
    ],
    [
      { onsetSd: 4 },
      "larger of 4 standard deviations of the weighing",
      "larger of 5 standard deviations of the weighing",
    ],
    [{ onsetWeightFraction: 0.02 }, "and 2 % of body weight", "and 1 % of body weight"],
    [{ onsetBackSeconds: 0.02 }, "minus 20 ms", "minus 30 ms"],
    [{ contactSd: 6 }, "larger of 6 of its standard deviations", "larger of 5 of its standard deviations"],
    [{ contactMinimumNewtons: 20 }, "and 20 N that holds", "and 10 N that holds"],
    [{ contactHoldSeconds: 0.025 }, "holds for 25 ms", "holds for 30 ms"],
    [{ contactCarrySeconds: 0.002 }, "by 2 ms at most", "by 1.5 ms at most"],
    [{ contactCarryRateHz: 2000 }, "Both stand where force crosses that threshold", "carried outwards"],
    [{ gravity: 9.82 }, "Gravity is 9.82 m/s²", "Gravity is 9.80665 m/s²"],
    [{ trialStatistic: "median" }, "The median of the trials stands for a side", "The mean of the trials"],
    [{ minimumTrialsPerSide: 4 }, "With at least 4 trials a side", "With at least 3 trials a side"],
    [{ statusConfidence: 0.9 }, "where the whole 90 % interval", "where the whole 80 % interval"],
    [{ drawnConfidence: 0.99 }, "Its 80 % and 99 % intervals", "Its 80 % and 95 % intervals"],
  ];

  test.each(changes)("follows the setting %j", (change, words, before) => {
    const changed = methodsParagraph(exampleSession(), settingsWith(change));
    expect(standard).toContain(before);
    expect(changed).toContain(words);
    expect(changed).not.toContain(before);
  });

  test("names the engine, the settings and the criteria set", () => {
    expect(standard).toContain(
      `Made with Counterpoise ${engineVersion}, settings ${settingsHash(defaultSettings).slice(0, 12)}, criteria set “Return to pivoting sport” version 3.`,
    );
  });

  test("speaks of a filter only where a measure used one", () => {
    expect(standard).toContain("No filter was applied: every number comes from unfiltered force.");
    const measures = [{ id: "timeToStabilisation", side: "both", value: 0.8, unit: "s" }] as const;
    const trials = [exampleTrial("a.csv", "both", 0.3, { measures })];
    const filtered = methodsParagraph(exampleSession({ trials }), settingsWith({ stabilisationFilterHz: 25 }));
    expect(filtered).toContain("the time to stabilisation alone reads force low-passed at 25 Hz");
  });

  test("says how each trial was weighed, and how short the standing was", () => {
    expect(standard).toContain(
      "In 6 trials without usable standing the weight of the session's other trials on the same plates was used",
    );
    const trials = [
      exampleTrial("c.csv", "both", 0.3, {
        weight: { newtons: 700, uncertainty: 0.2, from: "quiet standing before and after the jump" },
      }),
      exampleTrial("a.csv", "both", 0.3, {
        rate: 600,
        weight: { newtons: 700, uncertainty: 9, from: "quiet standing before the jump", window: { start: 0, end: 96 } },
      }),
      exampleTrial("b.csv", "both", 0.3, { weight: { newtons: 700, uncertainty: 5, from: "entered mass" } }),
    ];
    const description = { ...exampleSession().description, massKg: 71.4 };
    const text = methodsParagraph(exampleSession({ trials, description }), defaultSettings);
    // By hand: 96 samples at 600 Hz are 0.16 s.
    expect(text).toContain("In 1 trial quiet standing was shorter (0.16 s at the least)");
    expect(text).toContain("In 1 trial with quiet standing before and after the jump, body weight is the change");
    expect(text).toContain("In 1 trial weight follows from the entered mass of 71.4 kg.");
    expect(text).toContain("recorded at 600 and 1000 Hz");
    expect(text).not.toContain("pooled");
  });

  test("takes the gravity the session was analysed with before that of its description and of the settings", () => {
    expect(methodsParagraph(exampleSession({ gravity: 9.83 }), defaultSettings)).toContain("Gravity is 9.83 m/s²");
    const description = { ...exampleSession().description, gravity: 9.8192 };
    expect(methodsParagraph(exampleSession({ description }), defaultSettings)).toContain("Gravity is 9.8192 m/s²");
  });

  test("says which events were moved by hand and how many trials a person excluded", () => {
    expect(standard).toContain("Events were moved by hand in 1 trial (take-off).");
    expect(standard).toContain("1 trial excluded by a person is not used.");
    const untouched = exampleTrials.slice(0, 1);
    const text = methodsParagraph(exampleSession({ trials: untouched }), defaultSettings);
    expect(text).not.toContain("moved by hand");
    expect(text).not.toContain("excluded by a person");
  });

  test("describes the index that was formed, or that none was", () => {
    expect(standard).toContain("The index is 100 × the involved over the uninvolved side");
    expect(methodsParagraph(healthySession(), defaultSettings)).toContain("The index is 100 × left over right");
    const both = methodsParagraph(bothInvolvedSession(), defaultSettings);
    expect(both).toContain("Both knees are involved, so no index is formed.");
    expect(both).not.toContain("Fieller");
  });

  test("explains how a status is decided only where one was", () => {
    expect(standard).toContain("a criterion is met where");
    expect(methodsParagraph(stoppedSession(), defaultSettings)).not.toContain("a criterion is met where");
  });

  test("claims nothing where nothing was analysed", () => {
    const text = methodsParagraph(exampleSession({ trials: [], comparisons: [], criteria: [] }), defaultSettings);
    expect(text).toMatch(/^No trial was analysed\. Made with Counterpoise/);
    expect(text).not.toContain("References");
  });

  // The publications whose statements CHECKS.md marks [read]: A1, A2, A5, I1.
  const read = [
    "Owen et al. 2014, J Strength Cond Res 28(6):1552–1558",
    "McMahon et al. 2018, Strength Cond J 40(4):96–106",
    "Linthorne 2001, Am J Phys 69(11):1198–1204",
    "Fieller 1954, J R Stat Soc B 16:175–185",
  ];

  test("cites only publications that were read, each listed in full exactly when it is named", () => {
    const known = Object.values(methodReferences);
    expect(known.map((reference) => reference.full)).toEqual(read);
    const sessions: readonly SessionResult[] = [exampleSession(), healthySession(), bothInvolvedSession()];
    for (const session of sessions) {
      const [text = "", list = ""] = methodsParagraph(session, defaultSettings).split(" References: ");
      const listed = list.replace(/\.$/, "").split("; ");
      expect(listed).toEqual(known.filter(({ short }) => text.includes(short)).map(({ full }) => full));
      // Whatever looks like a citation (a name before a year) is one of them.
      const named = text.match(/\p{Lu}[\p{L} .]*? (?:19|20)\d\d/gu) ?? [];
      expect(named.filter((citation) => !known.some(({ short }) => citation.endsWith(short)))).toEqual([]);
      expect(named.length).toBeGreaterThan(0);
    }
  });
});
