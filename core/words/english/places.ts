import type { Place } from "../../ground/place.ts";
import { columnInWords } from "./file-parts-in-words.ts";
import { inPlateWords } from "./plate-words.ts";

/** "line 812", "2.31 s to 2.44 s"; empty when it concerns the whole. */
export function places(place: Place): string {
  switch (place.at) {
    case "whole":
      return "";
    case "line":
      return `line ${place.line}`;
    case "byte":
      return `byte ${place.byte}`;
    case "whole file":
      return "the whole file";
    case "whole document":
      return "whole document";
    case "platforms":
      return `force platforms ${place.first} to ${place.last}`;
    case "frame":
      return `frame ${place.frame}`;
    case "end of the file":
      return "end of the file";
    case "time column":
      return "the time column";
    case "columns":
      return `column ${place.names.join(" + ")}`;
    case "column":
      return `column ${columnInWords(place.column)}`;
    case "each column":
      return `column ${place.names.join(", ")}`;
    case "time":
      return `${place.seconds.toFixed(place.decimals)} s`;
    case "times":
      return place.seconds.map((each) => `${each.toFixed(place.decimals)} s`).join(", ");
    case "samples":
      return samples(place);
    case "span":
      return span(place);
    case "plate span":
      return `${inPlateWords(place.plate)}, ${span(place)}`;
    case "plates":
      return place.names.map(inPlateWords).join(", ");
    case "name":
      return place.name;
    case "names":
      return place.names.join(", ");
    case "trial":
      return `trial ${place.trial}`;
    case "words":
      return place.words;
  }
}

interface Span {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly decimals: number;
}

function span({ fromSeconds, toSeconds, decimals }: Span): string {
  return `${fromSeconds.toFixed(decimals)} s to ${toSeconds.toFixed(decimals)} s`;
}

function samples({ samples: named, more }: Extract<Place, { at: "samples" }>): string {
  const each = named.map(({ plate, seconds }) => `${inPlateWords(plate)} at ${seconds.toFixed(3)} s`);
  return `${each.join(", ")}${more > 0 ? `, and ${more} more` : ""}`;
}
