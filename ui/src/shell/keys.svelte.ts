/** Keys of the page. What is registered here is what "?" lists, so the list is never out of date. */
import { untrack } from 'svelte';
import { settings } from '../base/settings.svelte';
import type { Key } from '../words/words.svelte';

export interface KeyLine {
  /** As KeyboardEvent.key has it. */
  key: string;
  says: Key;
  run: () => void;
}

export const keyLines = $state<KeyLine[]>([]);

/** Registers keys for as long as the component that calls this lives. */
export function useKeys(lines: KeyLine[]): void {
  $effect(() => {
    // Adding to the list reads its length; the effect must not run again for that.
    untrack(() => keyLines.push(...lines));
    return () => {
      for (const line of lines) {
        const i = keyLines.findIndex((known) => known.key === line.key && known.says === line.says);
        if (i >= 0) keyLines.splice(i, 1);
      }
    };
  });
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement && (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName))
  );
}

export function listenForKeys(): () => void {
  const down = (event: KeyboardEvent) => {
    if (!settings.letterKeys || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
    if (isTyping(event.target) || document.querySelector('dialog[open]')) return;
    const line = keyLines.findLast((known) => known.key === event.key);
    if (!line) return;
    event.preventDefault();
    line.run();
  };
  addEventListener('keydown', down);
  return () => removeEventListener('keydown', down);
}
