import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

/** For packages that name the licence and leave its text out. */
const mit = `Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`;

/** The licences of the packages that modules come from, which go where their code goes. */
function licencesOf(modules: readonly string[]): string {
  const folders = new Set(modules.flatMap(id => /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+/.exec(id.replaceAll('\\', '/').replaceAll('\0', '')) ?? []));
  return [...folders].sort().filter(existsSync).map(folder => {
    const { name, version, license, author } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const file = readdirSync(folder).find(entry => /^licen[sc]e/i.test(entry));
    const by = typeof author === 'string' ? author : author?.name;
    return `${name} ${version}, ${license}${by ? `, by ${by.replace(/ *[<(].*$/, '')}` : ''}\n\n${file ? readFileSync(join(folder, file), 'utf8').trim() : license === 'MIT' ? mit : ''}`.trim();
  }).join('\n\n\n');
}

/**
 * Puts code and style into the page itself, and says in the page's content security policy that nothing else may run or be fetched.
 * Sound worklets are modules from data: URLs, since a file opened from disk can have them from nowhere else.
 */
function onePage(): Plugin {
  return {
    name: 'one-page',
    enforce: 'post',
    generateBundle(_options, bundle) {
      const page = bundle['practice.html'];
      if (page?.type !== 'asset') throw new Error('There is no practice.html to put things into.');
      let html = String(page.source);
      let code = '';
      let style = '';
      const modules: string[] = [];
      for (const [name, file] of Object.entries(bundle)) {
        if (file.type === 'chunk') {
          code += file.code;
          modules.push(...Object.keys(file.modules));
        }
        else if (name.endsWith('.css')) style += String(file.source);
        else continue;
        delete bundle[name];
      }
      // Text that would end the element early can only stand in strings, where the escape means the same.
      code = code.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
      html = html.replace(/<script type="module"[^>]*><\/script>/, '').replace(/<link rel="stylesheet"[^>]*>/, '');
      const hash = createHash('sha256').update(code).digest('base64');
      const policy = [
        "default-src 'none'", `script-src 'sha256-${hash}' data: 'wasm-unsafe-eval'`, "style-src 'unsafe-inline'", 'font-src data:', 'img-src data:',
        'media-src blob:', "connect-src 'none'", "base-uri 'none'", "form-action 'none'",
      ].join('; ');
      html = html.replace('%POLICY%', policy)
        .replace('%LICENCES%', () => licencesOf(modules).replaceAll('&', '&amp;').replaceAll('<', '&lt;'))
        .replace('</head>', () => `<style>${style}</style>\n</head>`)
        .replace('</body>', () => `<script type="module">${code}</script>\n</body>`);
      page.source = html;
    },
  };
}

export default defineConfig({
  base: './',
  build: {
    target: 'es2023',
    modulePreload: false,
    cssCodeSplit: false,
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    rollupOptions: { input: 'practice.html' },
  },
  plugins: [onePage()],
});
