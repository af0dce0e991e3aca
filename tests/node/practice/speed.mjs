// Measures how quick a practice page is: node speed.mjs PAGE [BROWSER]. Figures depend on the machine; run it on a quiet one.
import { statSync } from 'node:fs';
import { launch, state } from './browser.mjs';

const [file, program = '/usr/bin/chromium'] = process.argv.slice(2);
// Play is pressed by a script here, which browsers let sound only when told to.
const browser = await launch(program, ['--autoplay-policy=no-user-gesture-required']);

const opened = [];
for (let i = 0; i < 5; i++) {
  const page = await browser.open(file, {
    before: () => {
      window.moments = {};
      new MutationObserver(() => {
        if (document.querySelector('.sheet')) window.moments.pages ??= performance.now();
        const play = document.querySelector('.play');
        if (play && !window.moments.pressed) {
          window.moments.pressed = performance.now();
          play.click();
        }
        if (play?.dataset.state === 'playing') window.moments.playing ??= performance.now();
      }).observe(document, { subtree: true, childList: true, attributes: true });
    },
  });
  await page.waitForFunction(() => window.moments.playing && window.moments.pages);
  opened.push(await page.evaluate(() => window.moments));
  await page.done();
}
const median = values => [...values].sort((a, b) => a - b)[values.length >> 1];
console.log(`file                 ${(statSync(file).size / 1e6).toFixed(2)} MB`);
console.log(`pages seen after     ${median(opened.map(o => o.pages)).toFixed(0)} ms`);
console.log(`playing after        ${median(opened.map(o => o.playing)).toFixed(0)} ms, play pressed as soon as it is there`);

const page = await browser.open(file, {
  before: () => {
    window.long = [];
    new PerformanceObserver(list => window.long.push(...list.getEntries().map(entry => [entry.startTime, entry.duration]))).observe({ type: 'longtask' });
  },
});
await page.waitForTimeout(8000);
await page.click('.play');
await page.waitForTimeout(1500);
const frames = await page.evaluate(() => new Promise(resolve => {
  window.long = [];
  const times = [];
  const next = now => {
    times.push(now);
    if (now - times[0] < 10000) requestAnimationFrame(next);
    else resolve({ count: times.length, worst: Math.max(...times.slice(1).map((t, i) => t - times[i])), long: window.long.map(l => Math.round(l[1])) });
  };
  requestAnimationFrame(next);
}));
console.log(`frames in 10 s       ${frames.count}, the longest wait ${frames.worst.toFixed(0)} ms, state ${await state(page)}`);
console.log(`tasks over 50 ms     ${frames.long.length === 0 ? 'none' : frames.long.join(', ') + ' ms'}`);

// On a busy machine the clock counts others' work too: the processor time of each task does not.
const tracer = page.context().browser();
await tracer.startTracing(page, { categories: ['__metadata', 'toplevel', 'disabled-by-default-devtools.timeline'] });
await page.waitForTimeout(10000);
const { traceEvents } = JSON.parse((await tracer.stopTracing()).toString());
const main = new Set(traceEvents.filter(event => event.name === 'thread_name' && event.args.name === 'CrRendererMain').map(event => `${event.pid} ${event.tid}`));
const tasks = traceEvents.filter(event => event.name === 'RunTask' && main.has(`${event.pid} ${event.tid}`)).map(event => (event.tdur ?? 0) / 1000);
const long = tasks.filter(ms => ms > 50);
console.log(`processor time       ${tasks.length} tasks in 10 s, together ${tasks.reduce((a, b) => a + b, 0).toFixed(0)} ms, the longest ${Math.max(...tasks).toFixed(1)} ms, over 50 ms: ${long.length === 0 ? 'none' : long.map(ms => ms.toFixed(0)).join(', ')}, state ${await state(page)}`);
await page.done();
await browser.close();
