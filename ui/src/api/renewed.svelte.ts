/** Whether the program has other pages by now than the ones shown: it was renewed while a tab stood open. */
export const renewed = $state({ seen: false });

/** Looks whether the script that runs here is still among the program's. */
export async function lookForNewPages(): Promise<void> {
  const own = document.querySelector('script[type="module"][src]')?.getAttribute('src');
  if (!own) return;
  try {
    const listing = (await (await fetch('/shell.json', { cache: 'no-store' })).json()) as { files?: string[] };
    if (Array.isArray(listing.files) && !listing.files.includes(own)) renewed.seen = true;
  } catch {
    // no connection, or pages that are served without a listing: then nothing is known, and nothing is said
  }
}
