// Prints how long the engraving library verovio takes from a MusicXML file to all its pages as SVG, and how many pages that makes.
// Arguments: file, runs, paper width, height, side margin, top margin, bottom margin and staff space in millimetres.
import { readFileSync } from "node:fs";
import createVerovioModule from "verovio/wasm";
import { VerovioToolkit } from "verovio/esm";

const [file, runs, ...lengths] = process.argv.slice(2);
const [width, height, side, top, bottom, space] = lengths.map((length) => Number(length) * 10);
const xml = readFileSync(file, "utf8");
const toolkit = new VerovioToolkit(await createVerovioModule());
// Lengths are tenths of a millimetre; a unit is half a staff space.
toolkit.setOptions({
  inputFrom: "xml",
  pageWidth: width,
  pageHeight: height,
  pageMarginLeft: side,
  pageMarginRight: side,
  pageMarginTop: top,
  pageMarginBottom: bottom,
  unit: space / 2,
  breaks: "auto",
  footer: "none",
});
const times = [];
let pages = 0;
let reach = 0;
for (let run = 0; run < Number(runs); run++) {
  const start = performance.now();
  if (!toolkit.loadData(xml)) throw new Error(`verovio does not load ${file}`);
  pages = toolkit.getPageCount();
  const drawn = Array.from({ length: pages }, (_, page) => toolkit.renderToSVG(page + 1));
  times.push(performance.now() - start);
  // Where the lowest staff line of the last page is, as a share of the page's height.
  const view = /viewBox="0 0 (\d+) (\d+)"/g;
  const box = [...drawn[pages - 1].matchAll(view)].pop();
  const lines = [...drawn[pages - 1].matchAll(/d="M\d+ (\d+) L\d+ \1"/g)].map((match) => Number(match[1]));
  reach = (Math.max(...lines) / Number(box[2]));
}
times.sort((a, b) => a - b);
console.log(JSON.stringify({ median: times[times.length >> 1], best: times[0], pages, reach }));
