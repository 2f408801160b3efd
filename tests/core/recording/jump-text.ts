/** Load of a plain jump in body weights at 1000 Hz: standing, unweighting, push, flight, landing, standing. */
function loadAt(index: number): number {
  if (index < 1000) return 1;
  if (index < 1200) return 0.6;
  if (index < 1500) return 1.8;
  if (index < 1900) return 0;
  return index < 2000 ? 3 : 1;
}

export const jumpRows = 3000;

/** Rows of a made-up jump: time stamps, then each column's share of a load. Nothing here is a recording. */
export function jumpText(
  header: string,
  shares: readonly number[],
  { delimiter = ",", time = (index: number) => (index / 1000).toFixed(3), decimals = 3 } = {},
): string {
  const rows = Array.from({ length: jumpRows }, (_, index) => {
    const forces = shares.map((share, column) =>
      (loadAt(index) * share + (((index + column) % 3) - 1) * 0.0005 * share).toFixed(decimals),
    );
    return [...(time(0) === "" ? [] : [time(index)]), ...forces].join(delimiter);
  });
  return `${header}\n${rows.join("\n")}\n`;
}
