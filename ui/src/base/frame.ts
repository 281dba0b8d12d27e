/** Calls back once the next frame has been handed on for painting: for what may wait until something can be seen. */
export function afterFrame(then: () => void): void {
  // A tab in the background has no frames; there it is the timer that comes first.
  let done = false;
  const once = (): void => {
    if (done) return;
    done = true;
    then();
  };
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, 200);
}
