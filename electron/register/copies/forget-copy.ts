import { RequestRefused } from "../../refusals/request-refused.ts";
import type { Register } from "../register.ts";
import { listCopies, notesOf } from "./list-copies.ts";

/**
 * Takes a copy off the list that a person says is no longer anywhere: the notes about it go to the bin, and erasing
 * names it no more.
 * @throws RequestRefused when there is no such copy elsewhere, or it still lies where it was put
 */
export function forgetCopy(register: Register, key: string): void {
  register.requireWritable();
  const notes = notesOf(register, key);
  const copy = listCopies(register).copies.find((each) => each.key === key);
  if (notes.length === 0 || copy === undefined) {
    throw new RequestRefused("There is no such copy elsewhere in the list; nothing was changed.");
  }
  if (copy.state === "there") {
    throw new RequestRefused(`${copy.path} is still there: delete it first. Nothing was changed.`);
  }
  register.writes.moveToBin(...notes);
}
