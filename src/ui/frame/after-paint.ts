/**
 * Does something once what was tapped is painted: within the frame's callback nothing is painted yet,
 * in the task after it everything is. Returns how to leave it undone. A page that is out of sight paints
 * nothing, so what must not be lost is also done when the page is hidden.
 */
export function afterPaint(act: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const frame = requestAnimationFrame(() => {
    timer = setTimeout(act);
  });
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(timer);
  };
}
