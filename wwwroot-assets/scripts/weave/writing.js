// Writings as the page hands them over: "u1[o1[u2o1]2u2]3" is under 1, then three times: over 1, twice under 2 and over 1, under 2.

/** The items of a writing: runs { over, count } and brackets { items, times }. */
export function readItems(text) {
  const open = [[]];
  for (const [sign, times] of text.matchAll(/\[|\](\d+)|[ou]\d+/g)) {
    if (sign === '[') {
      open.push([]);
    } else if (times !== undefined) {
      const items = open.pop();
      open.at(-1).push({ items, times: Number(times) });
    } else {
      open.at(-1).push({ over: sign[0] === 'o', count: Number(sign.slice(1)) });
    }
  }
  return open[0];
}

/** The runs one after another; each knows how many ends the needle has passed before it, and where in its brackets it stands, the outermost first. */
export function writeOut(items) {
  const runs = [];
  let passed = 0;
  const write = (items, brackets) => {
    for (const item of items) {
      if (!item.items) {
        runs.push({ ...item, passed, brackets });
        passed += item.count;
        continue;
      }
      for (let time = 1; time <= item.times; time++) {
        write(item.items, [...brackets, { time, times: item.times }]);
      }
    }
  };
  write(items, []);
  return runs;
}
