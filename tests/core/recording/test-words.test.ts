import { describe, expect, test } from "vitest";
import { nameOffers } from "../../../core/assignment/name-offers.ts";
import { testKinds } from "../../../core/ground/test-kind.ts";
import { testIn } from "../../../core/recording/named-in-words.ts";
import { assignTrial } from "../../../core/trial/assign-trial.ts";
import { english } from "../../../core/words/english.ts";

describe("one dictionary names the tests in headers, in names of files and in names of folders", () => {
  const words = [
    "CMJ",
    "Counter-movement jump",
    "contre-mouvement",
    "Kniebeugesprung",
    "SJ",
    "Depth Jump",
    "Tief-Sprung",
    "depth landing",
    "Hüpfer",
    "rebounds",
    "Vertical",
  ];

  test.each(words)("%s is the same test at every door, or at none", (word) => {
    const inHeader = testIn(word);
    expect(nameOffers(`${word} 3`).test).toBe(inHeader);
    expect(assignTrial(`${word} 3.csv`, {}, undefined).test).toBe(inHeader);
    expect(inHeader === undefined).toBe(word === "Vertical");
  });

  test.each([
    ["CMJ arm swing left", "countermovementJumpArmSwing"],
    ["left_ArmSwing_CMJ_2", "countermovementJumpArmSwing"],
    ["Gegenbewegungssprung mit Armschwung", "countermovementJumpArmSwing"],
    ["contre-mouvement bras libres", "countermovementJumpArmSwing"],
    ["Contramovimiento con balanceo de brazos", "countermovementJumpArmSwing"],
    ["contromovimento con slancio delle braccia", "countermovementJumpArmSwing"],
    ["contramovimento braços livres", "countermovementJumpArmSwing"],
    ["CMJ no arm swing", "countermovementJump"],
    ["Gegenbewegungssprung ohne Armschwung", "countermovementJump"],
    ["CMJ with arms crossed", "countermovementJump"],
    ["CMJ hands on hips", "countermovementJump"],
    ["arm swing left", undefined],
    ["drop jump and CMJ arm swing", undefined],
  ])("%s says whether the arms swing, at every door alike", (words, kind) => {
    expect(testIn(words)).toBe(kind);
    expect(nameOffers(words).test).toBe(kind);
    expect(assignTrial(`${words}.csv`, {}, undefined).test).toBe(kind);
  });

  test.each(testKinds)("%s is named by its trade's name and by its identifier", (kind) => {
    expect(testIn(english.tests.label(kind))).toBe(kind);
    expect(testIn(kind)).toBe(kind);
  });
});
