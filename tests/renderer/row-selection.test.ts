import { describe, expect, it } from "vitest";
import {
  afterKey,
  keptSelection,
  onlyRow,
  type RowSelection,
  rangeTo,
  withToggled,
} from "../../renderer/recordings/row-selection.ts";

const keys = ["a", "b", "c", "d"];
const press = (selection: RowSelection, key: string, held: { shift?: boolean; control?: boolean } = {}) => {
  const pressed = { key, shiftKey: held.shift ?? false, control: held.control ?? false };
  const after = afterKey(selection, pressed, keys);
  return after && { active: after.active, chosen: [...after.chosen] };
};

describe("choosing rows", () => {
  it("with a key moves to the next row and stays at the ends", () => {
    expect(press(onlyRow("b"), "ArrowDown")).toEqual({ active: "c", chosen: ["c"] });
    expect(press(onlyRow("a"), "ArrowUp")).toEqual({ active: "a", chosen: ["a"] });
    expect(press(onlyRow("b"), "End")).toEqual({ active: "d", chosen: ["d"] });
    expect(press(onlyRow("b"), "x")).toBeUndefined();
  });

  it("with Shift takes everything from where it began, in either direction", () => {
    const down = rangeTo(onlyRow("b"), "d", keys);
    expect([...down.chosen]).toEqual(["b", "c", "d"]);
    expect([...rangeTo(down, "a", keys).chosen]).toEqual(["a", "b"]);
    expect(press(onlyRow("b"), "ArrowDown", { shift: true })).toEqual({ active: "c", chosen: ["b", "c"] });
  });

  it("with Control moves without choosing, Space then takes the row in or out, and one always stays", () => {
    const moved = afterKey(onlyRow("a"), { key: "ArrowDown", shiftKey: false, control: true }, keys);
    expect(moved && { active: moved.active, chosen: [...moved.chosen] }).toEqual({ active: "b", chosen: ["a"] });
    expect(press(moved!, " ")).toEqual({ active: "b", chosen: ["a", "b"] });
    expect([...withToggled(onlyRow("a"), "a").chosen]).toEqual(["a"]);
    expect(press(onlyRow("c"), "a", { control: true })).toEqual({ active: "c", chosen: keys });
  });

  it("survives rows that go, and begins anew where its own row is gone", () => {
    const selection = rangeTo(onlyRow("b"), "d", keys);
    expect([...keptSelection(selection, ["a", "b", "d"], "a").chosen]).toEqual(["b", "d"]);
    expect(keptSelection(selection, ["a", "b"], "a")).toEqual(onlyRow("a"));
    expect(keptSelection(undefined, keys, "c")).toEqual(onlyRow("c"));
  });
});
