/** A file made for the person, ready to be saved. */

export interface MadeFile {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}
