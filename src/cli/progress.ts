/** How far a long run is, on a terminal; a log has nothing of it. */

export interface Progress {
  /** One more is done. */
  readonly step: () => void;
  /** Prints something while the bar is out of the way. */
  readonly aside: (print: () => Promise<void>) => Promise<void>;
  readonly stop: () => void;
}

const none: Progress = { step: () => {}, aside: (print) => print(), stop: () => {} };

/** A bar on standard error, where that is a terminal. @param total none: there is nothing to wait for */
export async function openProgress(total: number): Promise<Progress> {
  const { stderr } = process;
  if (total === 0 || !stderr.isTTY || process.env['TERM'] === 'dumb') return none;
  const { MultiBar } = await import('cli-progress');
  // The library's bar for one alone puts the cursor back to where it began, which has scrolled away when lines were printed.
  const bars = new MultiBar({
    stream: stderr,
    format: '{bar}  {value} of {total} files  {eta_formatted} to go',
    barsize: 24,
    barCompleteChar: '━',
    barIncompleteChar: '─',
    clearOnComplete: true,
    forceRedraw: true,
    // Nothing of the terminal is changed, so nothing has to be put right when the run is broken off.
    gracefulExit: false,
    hideCursor: false,
    linewrap: true,
    fps: 5,
  });
  const bar = bars.create(total, 0);
  return {
    step: () => bar.increment(),
    aside: async (print) => {
      stderr.write('\r\u001B[K');
      await print();
      bars.update();
    },
    stop: () => bars.stop(),
  };
}
