import { expect, it } from "vitest";
import { sessionChoices } from "../../renderer/shell/session-choices.ts";

it("puts the sessions of one athlete together, the day first and in words", () => {
  const sessions = [
    { folder: "a/1", title: "Maren", subtitle: "month 4, return to running, 2026-07-14" },
    { folder: "a/2", title: "Maren", subtitle: "2026-10-14" },
    { folder: "b", title: "b", subtitle: "3 recordings" },
  ];
  expect(sessionChoices({ sessions })).toEqual([
    {
      group: "Maren",
      items: [
        { value: "a/1", label: "14 Jul 2026 · month 4, return to running" },
        { value: "a/2", label: "14 Oct 2026" },
      ],
    },
    { group: "b", items: [{ value: "b", label: "3 recordings" }] },
  ]);
});
