import { mount } from 'svelte';
import App from './App.svelte';
import './theme/tokens.css';
import './theme/page.css';
import './theme/print.css';

const target = document.getElementById('app');
if (!target) throw new Error('index.html has no #app');
mount(App, { target });

if ('serviceWorker' in navigator && import.meta.env.PROD) {
  // Without it the pages work as well, only not without a connection; so a refusal is no fault.
  navigator.serviceWorker.register('/sw.js').catch((fault: unknown) => console.info('no offline copy:', fault));
}
