/**
 * Rounds after which the rest is sorted: numbers in an order that no pivot halves are not worth more. No setting: it
 * spares time; the result is the same either way.
 */
const mostRounds = 60;

/**
 * The value that would stand at `rank` if the values were sorted (numbers rising, then NaN), in a time that grows with
 * their number alone. The values change their places.
 */
export function orderStatistic(values: Float64Array, rank: number): number {
  let first = 0;
  let last = numbersFirst(values) - 1;
  if (rank > last) return values[rank]!;
  for (let round = 0; first < last; round += 1) {
    if (round === mostRounds) {
      values.subarray(first, last + 1).sort();
      break;
    }
    const pivot = middleOf(values[first]!, values[(first + last) >> 1]!, values[last]!);
    let low = first;
    let high = last;
    while (low <= high) {
      while (values[low]! < pivot) low += 1;
      while (values[high]! > pivot) high -= 1;
      if (low > high) break;
      const lower = values[high]!;
      values[high] = values[low]!;
      values[low] = lower;
      low += 1;
      high -= 1;
    }
    // Between the two parts lies at most one value, and it is the pivot.
    if (rank <= high) last = high;
    else if (rank >= low) first = low;
    else break;
  }
  return values[rank]!;
}

/** Moves everything that is no number behind the numbers; how many numbers there are. */
function numbersFirst(values: Float64Array): number {
  let count = values.length;
  for (let index = 0; index < count; ) {
    const value = values[index]!;
    if (!Number.isNaN(value)) {
      index += 1;
      continue;
    }
    count -= 1;
    values[index] = values[count]!;
    values[count] = value;
  }
  return count;
}

function middleOf(one: number, two: number, three: number): number {
  return Math.max(Math.min(one, two), Math.min(Math.max(one, two), three));
}
