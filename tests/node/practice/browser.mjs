// Opens practice pages in Chromium without a window, and hears what they play.
import { chromium } from 'playwright-core';
import { recorder } from './recorder.mjs';

const usual = [
  '--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync',
];

/**
 * @param program The browser's executable.
 * @param more Further switches for it.
 */
export async function launch(program, more = []) {
  const browser = await chromium.launch({ executablePath: program, args: [...usual, ...more] });
  const requests = [];
  return {
    /** Every address that any page asked for, but for the page itself and what is inside it. */
    requests,
    /** Opens a page in a context of its own. */
    async open(file, { width = 1280, height = 800, scheme = 'light', before = null, hears = false } = {}) {
      const context = await browser.newContext({ viewport: { width, height }, colorScheme: scheme, reducedMotion: 'reduce' });
      const page = await context.newPage();
      const errors = [];
      page.on('pageerror', error => errors.push(error.message));
      page.on('console', message => { if (message.type() === 'error') errors.push(message.text()); });
      page.on('request', request => { if (!/^(data|blob):/.test(request.url()) && request.url() !== `file://${file}`) requests.push(request.url()); });
      if (hears) await page.addInitScript(recorder);
      if (before) await page.addInitScript(before);
      await page.goto(`file://${file}`);
      await page.waitForSelector('.cursor', { state: 'attached' });
      return Object.assign(page, { errors, done: () => context.close() });
    },
    close: () => browser.close(),
  };
}

export const state = page => page.locator('.play').getAttribute('data-state');

export async function setSpeed(page, percent) {
  await page.evaluate(value => {
    const slider = document.querySelector('.speed input[type=range]');
    slider.value = value;
    slider.dispatchEvent(new Event('input', { bubbles: true }));
  }, percent);
}

/** Plays for some seconds and returns what was heard and where the cursor was. */
export async function hear(page, seconds) {
  await page.evaluate(() => window.heard.clear());
  await page.click('.play');
  await page.waitForTimeout(seconds * 1000);
  await page.click('.play');
  await page.waitForTimeout(400);
  return page.evaluate(() => window.heard.take());
}
