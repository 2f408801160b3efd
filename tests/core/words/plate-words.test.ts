import { expect, test } from "vitest";
import { inPlateWords, plateWordsFirst } from "../../../core/words/english/plate-words.ts";

test.each([
  ["left", "plate left", "Plate left"],
  ["plate 1", "plate 1", "Plate 1"],
  ["force platform 2", "force platform 2", "Force platform 2"],
  ["force platform 1 + force platform 3", "force platform 1 + force platform 3", "Force platform 1 + force platform 3"],
  ["Left_plate", "Left_plate", "Left_plate"],
  ["template", "plate template", "Plate template"],
])("A plate named %s is %s in a sentence: never a plate plate", (name, within, first) => {
  expect([inPlateWords(name), plateWordsFirst(name)]).toEqual([within, first]);
});
