import { visibleLine, visibleText } from "../terminal/visible-text.ts";

/** Where the command line writes: the result and nothing else on `out`, everything said about it on `err`. */
export interface Sinks {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** The same for the commands: whatever they write, no name in it acts on the terminal. */
export interface Streams {
  readonly out: (text: string) => void;
  /** One line on `err`. */
  readonly say: (sentence: string) => void;
}

export function streamsInto({ out, err }: Sinks): Streams {
  return {
    out: (text) => out(visibleText(text)),
    say: (sentence) => err(`${visibleLine(sentence)}\n`),
  };
}
