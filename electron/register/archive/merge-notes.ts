/** More than a person would go through. */
const mostNotes = 500;

/** What is said beside the result; beyond some hundred notes only how many more there are. */
export class Notes {
  readonly #notes: string[] = [];
  #more = 0;

  get all(): readonly string[] {
    return this.#more === 0 ? this.#notes : [...this.#notes, `There are ${this.#more} more notes like these.`];
  }

  add(note: string): void {
    if (this.#notes.length < mostNotes) this.#notes.push(note);
    else this.#more += 1;
  }
}
