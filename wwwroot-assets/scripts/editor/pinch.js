// Two fingers that part or meet: by how many steps the cells grow.

const STEP = 1.25;

/** fingers: places { x, y }; spread: how far apart they were at the last step, null at first. The steps to take, and how far apart they count as now. */
export function pinch(fingers, spread) {
  if (fingers.length !== 2) {
    return { steps: 0, spread: null };
  }
  const now = Math.max(1, Math.hypot(fingers[0].x - fingers[1].x, fingers[0].y - fingers[1].y));
  const steps = spread === null ? 0 : Math.trunc(Math.log(now / spread) / Math.log(STEP));
  return { steps, spread: spread === null ? now : spread * STEP ** steps };
}
