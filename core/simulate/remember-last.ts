/** The same function, asked once where the same instant is asked for several times in a row, as the limbs ask the body. */
export function rememberLast(value: (time: number) => number): (time: number) => number {
  let lastTime = Number.NaN;
  let last = Number.NaN;
  return (time) => {
    if (time !== lastTime) {
      last = value(time);
      lastTime = time;
    }
    return last;
  };
}
