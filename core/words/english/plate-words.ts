/** A name that says already that it names a plate: "plate 1", "force platform 2", "Left_plate". */
const namesPlate = /(^|[^a-z])(plate|platform)s?(?![a-z])/i;

/** A plate's name in a sentence: "plate left" after its column, and as it is where it says plate already. */
export function inPlateWords(name: string): string {
  return namesPlate.test(name) ? name : `plate ${name}`;
}

/** The same at the beginning of a sentence. */
export function plateWordsFirst(name: string): string {
  const words = inPlateWords(name);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
