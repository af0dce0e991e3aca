// Checks a practice page in a browser and prints what it found as JSON. Usage: node check.mjs BROWSER PAGE HOSTILE-PAGE CHECK...
import axe from 'axe-core';
import { hear, launch, setSpeed, state } from './browser.mjs';
import { cursorAt, hertz, lateness, loudness, onsets } from './sound.mjs';

const [program, file, hostile, ...asked] = process.argv.slice(2);
const browser = await launch(program);
const panels = ['Lesson', 'Loops', 'Sound', 'Tuning', 'Recording'];
const openPanel = async (page, title) => {
  const tab = page.locator('.tabs button', { hasText: title });
  if (await tab.getAttribute('aria-expanded') === 'false') await tab.click();
};
/** Opens each step of the lesson in turn with all that can be unfolded in it, and does something there. */
const eachStep = async (page, act) => {
  for (const head of await page.locator('.step-head').all()) {
    if (await head.getAttribute('aria-expanded') === 'false') await head.click();
    await page.evaluate(() => document.querySelectorAll('details').forEach(details => { details.open = true; }));
    await act(await head.locator('.step-title').textContent());
  }
};
const trouble = page => page.locator('.note-box').allTextContents();
const place = page => page.evaluate(() => Number(document.querySelector('.cursor').dataset.at));

const checks = {
  /** The cursor against the notes heard, at three speeds: milliseconds it is ahead. */
  async cursor() {
    const page = await browser.open(file, { hears: true });
    await page.keyboard.press('c');
    const ahead = {};
    const drawn = {};
    const columns = await page.evaluate(() => JSON.parse(document.getElementById('song').textContent).parts[0].notes.slice(0, 16).map(note => {
      const box = document.querySelector(`#note-${note.id} text`).getBoundingClientRect();
      return { on: note.on, x: (box.left + box.right) / 2 - document.querySelector('.sheet').getBoundingClientRect().left };
    }));
    for (const speed of [100, 50, 150]) {
      await setSpeed(page, speed);
      await page.keyboard.press('Home');
      await page.waitForTimeout(300);
      const heard = await hear(page, 4.2 * (speed < 100 ? 1.6 : 1));
      ahead[speed] = onsets(heard, 0.35 * 100 / speed).flatMap(moment => {
        const shown = cursorAt(heard, moment);
        // A note on each half second of the song.
        return shown === null || shown < 0.25 || shown > 7.7 ? [] : [(shown - Math.round(shown * 2) / 2) * 1000 * 100 / speed];
      });
      // Where the line is drawn between two notes of a bar, in milliseconds ahead of where it says it is.
      drawn[speed] = heard.cursor.flatMap(([, at, x, since]) => {
        const i = Math.floor(at * 2);
        const [left, right] = [columns[i], columns[i + 1]];
        if (at < 0.1 || at * 2 - i < 0.1 || at * 2 - i > 0.9 || i % 4 === 3 || !right) return [];
        const place = left.on + (x - left.x) / (right.x - left.x) * (right.on - left.on);
        return [(place - at) * 1000 * 100 / speed + since];
      });
    }
    // Where the cursor stands on the page, when it stands on a note.
    await page.keyboard.press('Home');
    const offset = await page.evaluate(async () => {
      const offsets = [];
      const song = JSON.parse(document.getElementById('song').textContent);
      for (const note of song.parts[0].notes.slice(0, 6)) {
        const group = document.getElementById(`note-${note.id}`);
        group.dispatchEvent(new MouseEvent('click', { bubbles: true }));
        await new Promise(resolve => requestAnimationFrame(() => requestAnimationFrame(resolve)));
        const box = group.querySelector('text').getBoundingClientRect();
        const line = document.querySelector('.cursor').getBoundingClientRect();
        offsets.push((line.left + line.right) / 2 - (box.left + box.right) / 2);
      }
      return offsets;
    });
    const { errors } = page;
    await page.done();
    return { ahead, drawn, offset, errors };
  },

  /** Loops of a bar: how late each pass is against the one before, in milliseconds, and the speed of a rising loop. */
  async loops() {
    const page = await browser.open(file, { hears: true });
    await page.keyboard.press('c');
    const late = {};
    for (const speed of [100, 50]) {
      await setSpeed(page, speed);
      await page.keyboard.press('Home');
      await page.keyboard.press('l');
      await page.waitForTimeout(300);
      const period = 2 * 100 / speed;
      // A machine with much else to do may begin late: then it is listened to for longer.
      late[speed] = [];
      for (let more = 0; more < 4 && late[speed].length === 0; more++) {
        const heard = await hear(page, (2.6 + more) * period + 0.5);
        const first = onsets(heard, 0.35 * 100 / speed)[1];
        if (first !== undefined) late[speed] = [0, 0.25, 0.5].map(share => lateness(heard, first + share * period, period)).filter(value => value !== null).map(value => value * 1000);
      }
      await page.keyboard.press('l');
    }
    const { errors } = page;
    await page.done();
    return { late, errors };
  },

  /** Call and response at two speeds: what is heard while a phrase is called and while it is answered, and what is shown and said. */
  async calls() {
    const page = await browser.open(file, { hears: true });
    await page.keyboard.press('c');
    const shown = async () => ({
      banner: await page.locator('.turn strong').allTextContents(),
      said: await page.locator('.said').textContent(),
      onNeck: await page.locator('.neck .role').count(),
      scale: await page.locator('.neck .tone').count(),
    });
    const result = {};
    for (const speed of [100, 50]) {
      await setSpeed(page, speed);
      await page.keyboard.press('r');
      await page.keyboard.press('Home');
      await page.waitForTimeout(400);
      await page.evaluate(() => window.heard.clear());
      await page.keyboard.press(' ');
      await page.waitForSelector('.turn:not(.is-answer)');
      await page.waitForFunction(() => document.querySelector('.play').dataset.state === 'playing');
      await page.waitForTimeout(1000);
      const called = await shown();
      await page.waitForSelector('.turn.is-answer');
      await page.waitForTimeout(600);
      const answer = await shown();
      await page.waitForSelector('.turn:not(.is-answer)');
      await page.waitForTimeout(1200 * 100 / speed);
      const next = await shown();
      await page.keyboard.press(' ');
      await page.waitForTimeout(300);
      const heard = await page.evaluate(() => window.heard.take());
      // The cursor goes back when the answer begins, and on when the next phrase does.
      const slow = 100 / speed;
      const { cursor } = heard;
      const back = cursor.findIndex((entry, i) => i > 0 && entry[1] < cursor[i - 1][1] - 0.5);
      const answerAt = cursor[back][0] - (cursor[back][1] - cursor[0][1]) * slow;
      const beats = onsets(heard, 0.35 * slow);
      result[speed] = {
        called, answer, next,
        // Seconds of the song from the answer's start at which something begins.
        begins: beats.map(moment => (moment - answerAt) / slow),
        loud: [loudness(heard, answerAt - 1.5 * slow, answerAt - 0.02), loudness(heard, answerAt + 0.9 * slow, answerAt + 1.95 * slow), loudness(heard, answerAt + 2.02 * slow, answerAt + 3 * slow)],
        backing: loudness(heard, answerAt, answerAt + 0.3 * slow),
      };
      await page.keyboard.press('r');
    }
    const where = () => page.locator('.turn strong').allTextContents();
    await page.keyboard.press('Home');
    await page.keyboard.press('r');
    result.keys = { on: await where() };
    await page.keyboard.press('ArrowRight');
    result.keys.next = await where();
    await page.keyboard.press('Home');
    result.keys.home = await where();
    await page.keyboard.press('l');
    result.keys.loop = await where();
    const { errors } = page;
    await page.done();
    return { ...result, errors };
  },

  /** The same long tone at full and at half speed, in hertz, and a semitone up. */
  async pitch() {
    const page = await browser.open(file, { hears: true });
    await page.keyboard.press('c');
    const tone = {};
    for (const [name, speed, semitones] of [['full', 100, 0], ['half', 50, 0], ['up', 100, 1]]) {
      await setSpeed(page, speed);
      await openPanel(page, 'Sound');
      const field = page.getByLabel('Semitones up or down');
      await field.fill(String(semitones));
      await field.blur();
      await page.keyboard.press('Home');
      for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowRight');
      await page.waitForTimeout(300);
      const heard = await hear(page, 2.4 * 100 / speed);
      const start = heard.cursor[0][0] - (heard.cursor[0][1] - 8) * 100 / speed;
      tone[name] = hertz(heard, start + 0.5 * 100 / speed, start + 1.5 * 100 / speed, 220 * 2 ** (semitones / 12));
    }
    await page.done();
    return tone;
  },

  /** A hundred times through a very short loop: the size of the script's memory, in bytes, after ten and after all. */
  async memory() {
    const page = await browser.open(file);
    const session = await page.context().newCDPSession(page);
    const used = async () => {
      await session.send('HeapProfiler.collectGarbage');
      return (await session.send('Runtime.getHeapUsage')).usedSize;
    };
    await page.keyboard.press('c');
    await setSpeed(page, 150);
    await openPanel(page, 'Loops');
    await page.locator('.rows button', { hasText: 'Tiny' }).click();
    await page.click('.play');
    const through = count => page.waitForFunction(n => Number(/pass (\d+)/.exec(document.querySelector('.time').textContent)?.[1] ?? 0) > n, count, { timeout: 120000 });
    await through(10);
    const before = await used();
    await through(100);
    const after = await used();
    await page.done();
    return { before, after };
  },

  /** What an independent reader of accessible pages has to say, by panel and colours. */
  async accessibility() {
    const found = [];
    const unfolded = new Set();
    for (const [scheme, width] of [['light', 1280], ['dark', 1280], ['light', 360], ['dark', 360]]) {
      const page = await browser.open(file, { scheme, width, height: 780 });
      const look = async where => {
        for (const summary of await page.locator('details[open] > summary').allTextContents()) unfolded.add(summary);
        await page.evaluate(axe.source);
        const { violations } = await page.evaluate(() => window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
        for (const violation of violations) found.push(`${scheme} ${width} ${where}: ${violation.id} (${violation.nodes.slice(0, 3).map(node => node.html.slice(0, 160)).join(' | ')})`);
      };
      for (const panel of panels) {
        await openPanel(page, panel);
        await look(panel);
        if (panel === 'Lesson') await eachStep(page, step => look(`${panel}, ${step}`));
      }
      await openPanel(page, 'Loops');
      await page.keyboard.press('r');
      await look('call and response');
      await page.keyboard.press('?');
      await page.evaluate(() => document.querySelectorAll('details').forEach(details => { details.open = true; }));
      await look('Help');
      await page.done();
    }
    return { found, unfolded: [...unfolded] };
  },

  /** What can't be reached with the Tab key, and what keys do. */
  async keyboard() {
    const page = await browser.open(file, { height: 1600 });
    const unreached = [];
    await page.evaluate(() => document.addEventListener('focusin', event => { event.target.dataset.reached = 'yes'; }));
    const goRound = async where => {
      const toReach = await page.evaluate(() => {
        document.querySelectorAll('[data-reached]').forEach(element => delete element.dataset.reached);
        document.activeElement?.blur();
        return document.querySelectorAll('button, input, select, summary, a[href], [tabindex]').length;
      });
      for (let i = 0; i < toReach + 20; i++) await page.keyboard.press('Tab');
      unreached.push(...await page.evaluate(place => [...document.querySelectorAll('button, input, select, summary, a[href], [tabindex="0"]')]
        .filter(element => element.checkVisibility() && !element.disabled && !element.dataset.reached)
        // Of a group of radio buttons one is reached by Tab, the others by arrows.
        .filter(element => !(element.type === 'radio' && document.querySelector(`input[name="${element.name}"][data-reached]`)))
        .map(element => `${place}: ${element.outerHTML.slice(0, 120)}`), where));
    };
    for (const [panel, isAnswering] of [...panels.map(panel => [panel, false]), ['Loops', true]]) {
      await openPanel(page, panel);
      if (isAnswering) await page.keyboard.press('r');
      await goRound(panel);
      if (panel === 'Lesson') await eachStep(page, step => goRound(`${panel}, ${step}`));
    }
    await page.evaluate(() => document.activeElement?.blur());
    await page.keyboard.press('r');
    const did = {};
    const press = async (key, see, name = key) => {
      await page.keyboard.press(key);
      await page.waitForTimeout(120);
      did[name] = await see();
    };
    const pressed = text => () => page.locator('.transport button', { hasText: text }).getAttribute('aria-pressed');
    const where = () => page.locator('.where strong').textContent();
    const speed = () => page.locator('.speed output').textContent();
    await press('Home', where);
    await press('ArrowRight', where);
    await press('ArrowLeft', where);
    await press('Shift+ArrowRight', where);
    await press('Home', where);
    await setSpeed(page, 100);
    await press('ArrowDown', speed);
    await press('ArrowUp', speed);
    await press('l', pressed('Loop'));
    await press(']', pressed('Loop'));
    await press('m', pressed('Without me'));
    await press('k', pressed('Click'));
    await press('c', pressed('Count-in'));
    await press('b', () => page.locator('.said').textContent());
    await press('?', () => page.locator('dialog[open] h2').textContent());
    await press('Escape', () => page.locator('dialog[open]').count());
    await press(' ', () => state(page), 'space');
    await press(' ', () => state(page), 'space again');
    await page.done();
    return { unreached, did };
  },

  /** A page whose texts try to break out, and print. */
  async texts() {
    const page = await browser.open(hostile, { before: () => { window.alert = () => { window.broken = true; }; } });
    await openPanel(page, 'Lesson');
    await page.locator('.step-head').first().click();
    for (const panel of panels) await openPanel(page, panel);
    const result = {
      title: await page.locator('h1').textContent(),
      pageTitle: await page.title(),
      broken: await page.evaluate(() => window.broken === true),
      images: await page.locator('img').count(),
      errors: page.errors,
    };
    await page.emulateMedia({ media: 'print' });
    result.printed = await page.evaluate(() => ['.dock', '.tabs', '.top', '.sheet'].map(name => getComputedStyle(document.querySelector(name)).display !== 'none'));
    await page.done();
    return result;
  },

  /** What the page remembers from one visit to the next. */
  async remembers() {
    const page = await browser.open(file);
    await setSpeed(page, 70);
    await openPanel(page, 'Loops');
    await page.keyboard.press('l');
    await page.getByLabel('Keep this loop as').fill('My bar');
    await page.locator('button', { hasText: /^Keep$/ }).click();
    await openPanel(page, 'Lesson');
    await page.locator('.step-head').first().click();
    await page.getByLabel('I have this one').check();
    await page.reload();
    await page.waitForSelector('.sheet');
    await openPanel(page, 'Loops');
    const result = { loops: await page.locator('.rows button', { hasText: 'My bar' }).count() };
    await openPanel(page, 'Lesson');
    result.step = await page.locator('.step-note').first().textContent();
    await page.done();
    return result;
  },

  /** Devices and files that are not as one would wish: what the page says, and whether it still does its work. */
  async troubles() {
    const result = {};
    const look = async (name, before, act = async () => {}) => {
      const page = await browser.open(file, { before });
      await page.keyboard.press('c');
      await act(page);
      await page.keyboard.press('Home');
      await page.keyboard.press(' ');
      await page.waitForTimeout(3200);
      result[name] = { said: await trouble(page), state: await state(page), place: await place(page), errors: page.errors };
      await page.done();
    };
    await look('noAudio', () => { delete window.AudioContext; delete window.webkitAudioContext; });
    await look('blocked', () => { AudioContext.prototype.resume = () => new Promise(() => {}); });
    await look('noStorage', () => Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('forbidden', 'SecurityError'); } }));
    await look('noWorklet', () => { AudioWorklet.prototype.addModule = () => Promise.reject(new Error('forbidden')); }, page => setSpeed(page, 50));
    await look('brokenSound', () => { OfflineAudioContext.prototype.decodeAudioData = () => Promise.reject(new Error('unknown codec')); });
    await look('noMicrophone', () => { navigator.mediaDevices && (navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('no', 'NotAllowedError'))); }, async page => {
      await openPanel(page, 'Tuning');
      await page.locator('button', { hasText: 'Listen' }).click();
      await page.waitForTimeout(1000);
    });

    const taken = await browser.open(file, { before: () => {
      const Native = window.AudioContext;
      window.AudioContext = class extends Native { constructor(options) { super(options); window.theContext = this; } };
    } });
    await taken.keyboard.press('c');
    await taken.keyboard.press(' ');
    await taken.waitForTimeout(1500);
    await taken.evaluate(() => window.theContext.suspend());
    await taken.waitForTimeout(300);
    result.taken = { said: await trouble(taken), state: await state(taken), place: await place(taken) };
    await taken.keyboard.press(' ');
    await taken.waitForTimeout(1000);
    result.taken.again = { state: await state(taken), place: await place(taken) };
    await taken.done();

    const page = await browser.open(file, { hears: true });
    result.droppedBeside = await page.evaluate(() => {
      const drop = new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: new DataTransfer() });
      document.querySelector('.sheet').dispatchEvent(drop);
      return drop.defaultPrevented;
    });
    result.panelAfter = await page.locator('aside h2').textContent();
    await openPanel(page, 'Recording');
    const give = async (name, buffer) => {
      await page.setInputFiles('input[type=file]', { name, mimeType: 'audio/wav', buffer });
      await page.waitForTimeout(1500);
      return trouble(page);
    };
    result.brokenFile = await give('noise.mp3', Buffer.from(Array.from({ length: 5000 }, (_, i) => i * 7 % 251)));
    result.emptyFile = await give('empty.wav', Buffer.alloc(0));
    await page.evaluate(() => Object.defineProperty(File.prototype, 'size', { configurable: true, get: () => 9e8 }));
    result.hugeFile = await give('huge.wav', Buffer.from('x'));
    await page.evaluate(() => { delete File.prototype.size; });
    await page.done();
    return result;
  },

  /** A recording of the player's own, lined up by taps. */
  async take() {
    const page = await browser.open(file, { hears: true });
    await openPanel(page, 'Recording');
    await page.setInputFiles('input[type=file]', { name: 'take.wav', mimeType: 'audio/wav', buffer: beeps(12, 1.5) });
    await page.locator('h3', { hasText: 'take.wav' }).waitFor();
    await page.keyboard.press('c');
    await page.locator('button', { hasText: 'Start tapping' }).click();
    // Taps at 1.5 and 4.5 s of the recording: bars at two thirds of the song's tempo.
    const tapAt = async seconds => {
      await page.waitForFunction(at => Number(document.querySelector('.cursor').dataset.at) >= at, seconds, { polling: 5 });
      await page.keyboard.press('t');
    };
    await tapAt(1.5);
    await tapAt(4.5);
    await page.locator('button', { hasText: 'Use the taps' }).click();
    const said = await page.locator('aside').textContent();
    const off = await offBeeps(page);
    await page.done();
    return { said, off };
  },

  /** A recording that the sheet lines up: known by its name, or said to be it. */
  async sheetTake() {
    const page = await browser.open(file, { hears: true });
    await openPanel(page, 'Recording');
    await page.setInputFiles('input[type=file]', { name: 'Band.mp3', mimeType: 'audio/wav', buffer: beeps(12, 1.5) });
    await page.locator('h3', { hasText: 'Band.mp3' }).waitFor();
    await page.keyboard.press('c');
    const said = await page.locator('aside').textContent();
    const off = await offBeeps(page);
    await page.setInputFiles('input[type=file]', { name: 'other.wav', mimeType: 'audio/wav', buffer: beeps(4, 1.5) });
    await page.locator('h3', { hasText: 'other.wav' }).waitFor();
    const other = await page.locator('aside').textContent();
    await page.locator('button', { hasText: 'This is band.wav' }).click();
    await page.locator('text=Lined up by the teacher').waitFor();
    const told = await page.locator('aside').textContent();
    await page.done();
    return { said, off, other, told };
  },
};

/** How far the cursor is, in milliseconds of a recording that beeps every 1.5 s, from the full second of the song that each beep is lined up with. */
async function offBeeps(page) {
  await page.keyboard.press('Home');
  await page.waitForTimeout(300);
  const heard = await hear(page, 5);
  return onsets(heard, 0.5).flatMap(moment => {
    const shown = cursorAt(heard, moment);
    return shown === null || shown < 0.2 ? [] : [(shown - Math.round(shown)) * 1500];
  });
}

/** A 16-bit WAV with a short beep every so many seconds. */
function beeps(seconds, every) {
  const rate = 48000;
  const file = Buffer.alloc(44 + seconds * rate * 2);
  file.write('RIFF', 0); file.writeUInt32LE(file.length - 8, 4); file.write('WAVEfmt ', 8); file.writeUInt32LE(16, 16); file.writeUInt16LE(1, 20); file.writeUInt16LE(1, 22);
  file.writeUInt32LE(rate, 24); file.writeUInt32LE(rate * 2, 28); file.writeUInt16LE(2, 32); file.writeUInt16LE(16, 34); file.write('data', 36); file.writeUInt32LE(file.length - 44, 40);
  for (let beep = 0; beep < seconds; beep += every) {
    for (let i = 0; i < 4800 && Math.round(beep * rate) + i < seconds * rate; i++) file.writeInt16LE(Math.round(12000 * Math.sin(2 * Math.PI * 880 * i / rate) * Math.exp(-i / 800)), 44 + 2 * (Math.round(beep * rate) + i));
  }
  return file;
}

const results = {};
for (const name of asked) {
  const started = Date.now();
  try {
    results[name] = await checks[name]();
  } catch (error) {
    results[name] = { failed: String(error?.stack ?? error) };
  }
  if (process.env.FRETLORE_TIMES) console.error(name, Date.now() - started, 'ms');
}
results.requests = browser.requests;
await browser.close();
console.log(JSON.stringify(results));
