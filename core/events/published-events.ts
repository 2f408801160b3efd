import type { EventName } from "../ground/event-name.ts";
import { startsFromBox, type TestKind, testFacts } from "../ground/test-kind.ts";
import type { EventEdit } from "../stated/event-edit.ts";
import type { EventKey } from "./jump-events.ts";

/** What an event is called outside: its name and, where a test counts its contacts, the contact's number from 1. */
export interface PublishedEvent {
  readonly name: EventName;
  readonly contactIndex?: number;
}

/** The public name of an event in a test (METHODS §3): only drop tests number their touchdowns. */
export function publishedEvent(test: TestKind, key: EventKey): PublishedEvent {
  if (key === "contactTouchdown") return { name: "touchdown", contactIndex: 1 };
  if (key !== "touchdown") return { name: key };
  const { landings } = testFacts(test);
  return startsFromBox(test) && landings !== "each contact"
    ? { name: "touchdown", contactIndex: landings }
    : { name: "touchdown" };
}

/** True when an edit moves this event; an edit without a contact's number means the landing. */
export function editsEvent(edit: EventEdit, test: TestKind, key: EventKey): boolean {
  const { name, contactIndex } = publishedEvent(test, key);
  if (edit.name !== name) return false;
  if (edit.contactIndex === undefined) return key !== "contactTouchdown";
  return edit.contactIndex === (contactIndex ?? 1);
}
