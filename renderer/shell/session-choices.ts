import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { dateWords } from "./words.ts";

/** The sessions of one athlete, or what stands alone under its own title. */
interface SessionChoices {
  readonly group: string;
  /** Mutable only because the select asks for it. */
  readonly items: { readonly value: string; readonly label: string }[];
}

/** The sessions at hand in their order, those of one athlete together. */
export function sessionChoices({ sessions }: Pick<Workspace, "sessions">): SessionChoices[] {
  const groups = new Map<string, SessionChoices["items"]>();
  for (const { folder, title, subtitle } of sessions) {
    groups.set(title, [...(groups.get(title) ?? []), { value: folder, label: choiceWords(subtitle) }]);
  }
  return [...groups].map(([group, items]) => ({ group, items }));
}

/** "month 7, 2026-10-14" as "14 Oct 2026 · month 7": the day first and in words, so that it is never the part cut off. */
function choiceWords(subtitle: string): string {
  const [, milestone = "", date = ""] = /^(?:(.*), )?(\d{4}-\d{2}-\d{2})$/.exec(subtitle) ?? [];
  return date === "" ? subtitle : [dateWords(date), milestone].filter((part) => part !== "").join(" · ");
}
