import { createHash } from 'node:crypto';
import { defineConfig, type Plugin } from 'vite';

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
      for (const [name, file] of Object.entries(bundle)) {
        if (file.type === 'chunk') code += file.code;
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
