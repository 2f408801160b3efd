/** Where the command line writes: the result and nothing else on `out`, everything said about it on `err`. */
export interface Streams {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}
