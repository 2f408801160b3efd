import type { Place } from "../../ground/place.ts";
import { columnInWords } from "./file-parts-in-words.ts";

/** "line 812", "2.31 s to 2.44 s"; empty when it concerns the whole. */
export function places(place: Place): string {
  switch (place.at) {
    case "whole":
      return "";
    case "line":
      return `line ${place.line}`;
    case "byte":
      return `byte ${place.byte}`;
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
    case "span":
      return `${place.fromSeconds.toFixed(place.decimals)} s to ${place.toSeconds.toFixed(place.decimals)} s`;
    case "name":
      return place.name;
    case "trial":
      return `trial ${place.trial}`;
    case "words":
      return place.words;
  }
}
