// Writes the built pages as one C++ file, plain and compressed, for src/serve/pages.h:
//   node ui/tools/embed.mjs build/ui build/pages.cpp
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { extname, join, relative } from 'node:path';
import { gzipSync } from 'node:zlib';

const [folder, out] = process.argv.slice(2);
const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.woff2': 'font/woff2',
};

function files(path) {
  return readdirSync(path).flatMap((name) => {
    const full = join(path, name);
    return statSync(full).isDirectory() ? files(full) : [full];
  });
}

const bytes = (data) => [...data].map((byte) => (byte > 127 ? byte - 256 : byte)).join(',');

let arrays = '';
let rows = '';
files(folder)
  .sort()
  .forEach((full, index) => {
    const path = `/${relative(folder, full).replaceAll('\\', '/')}`;
    const type = types[extname(path)];
    if (!type) throw new Error(`${path}: no content type is known for this ending`);
    const plain = readFileSync(full);
    // Fonts are compressed already.
    const gzip = extname(path) === '.woff2' ? Buffer.alloc(0) : gzipSync(plain, { level: 9 });
    const etag = createHash('sha256').update(plain).digest('hex').slice(0, 20);
    arrays += `constexpr char kPlain${index}[] = {${bytes(plain)},0};\n`;
    if (gzip.length > 0) arrays += `constexpr char kGzip${index}[] = {${bytes(gzip)},0};\n`;
    const packed = gzip.length > 0 ? `{kGzip${index}, ${gzip.length}}` : '{}';
    const immutable = path.startsWith('/assets/');
    rows += `      {"${path}", {kPlain${index}, ${plain.length}}, ${packed}, "${type}", "${etag}", ${immutable}},\n`;
  });

writeFileSync(
  `${out}.part`,
  `#include "serve/pages.h"

namespace serve {
namespace {

${arrays}
}  // namespace

std::vector<http::Asset> pages() {
  return {
${rows}  };
}

}  // namespace serve
`,
);
renameSync(`${out}.part`, out);
