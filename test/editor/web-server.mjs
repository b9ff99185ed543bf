// What the editor's workbench needs to run the extension in the browser's own extension host: a loopback port in front of the editor's server
// that also serves the extension and a folder that lies on no disk (memory-folder/), names both in the page, and keeps what is written to that
// folder. All of one origin, since the page loads from no other. It knows nothing of what is looked at.
import { readFile } from "node:fs/promises";
import { createServer, request as ask } from "node:http";
import { connect } from "node:net";
import path from "node:path";
import { root } from "./prepare.mjs";

const MIME = {
  ".css": "text/css",
  ".js": "text/javascript",
  ".json": "application/json",
  ".svg": "image/svg+xml",
};

/**
 * @param {object} o
 * @param {Awaited<ReturnType<typeof import("./workbench.mjs").startServer>>} o.server  the editor's
 * @param {string} o.extension  folder of the extension, unpacked
 * @param {Record<string, string>} o.files  the texts of the folder, by name
 * @param {string} [o.open]     the file of them that is opened first
 */
export async function serveInBrowser({
  server: editor,
  extension,
  files,
  open,
}) {
  const places = {
    extension,
    memory: path.join(root, "test/editor/memory-folder"),
  };
  const records = { "/shop/": "" };
  for (const [name, text] of Object.entries(files))
    records[`/shop/${name}`] = text;
  const written = new Map();
  const asked = [];

  const [host, port] = editor.authority.split(":");
  // Connections that were upgraded are no longer the server's to close, and the editor keeps its end of them open.
  const sockets = new Set();
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url, "http://127.0.0.1");
    const isOurs = /^\/(?:extension|memory)\//.test(pathname);
    if (!isOurs) return passOn(request, response, pathname === "/");
    asked.push(pathname);
    if (request.method === "POST") return keep(request, response);
    answer(pathname).then(
      ([type, body]) =>
        response.writeHead(200, { "content-type": type }).end(body),
      () => response.writeHead(404).end(),
    );
  });
  server.on("upgrade", (request, socket, head) => {
    const onward = connect(Number(port), host, () => {
      const headers = request.rawHeaders.reduce(
        (text, each, index) => text + each + (index % 2 === 0 ? ": " : "\r\n"),
        "",
      );
      onward.write(`GET ${request.url} HTTP/1.1\r\n${headers}\r\n`);
      onward.write(head);
      onward.pipe(socket).pipe(onward);
    });
    for (const each of [socket, onward]) {
      each.on("error", () => {}); // "close" follows
      each.on("close", () => {
        socket.destroy();
        onward.destroy();
      });
    }
  });
  server.on("connection", (socket) => {
    sockets.add(socket);
    socket.once("close", () => sockets.delete(socket));
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const authority = `127.0.0.1:${server.address().port}`;

  /** Hands a request to the editor's server; its page comes back changed. */
  function passOn(request, response, isPage) {
    const { method, url } = request;
    const headers = { ...request.headers, "accept-encoding": "identity" };
    const onward = ask({ host, port, method, path: url, headers }, (back) => {
      if (!isPage || back.statusCode !== 200) {
        response.writeHead(back.statusCode, back.headers);
        back.pipe(response);
        return;
      }
      let html = "";
      back.setEncoding("utf8");
      back.on("data", (text) => (html += text));
      back.on("end", () => {
        const { "content-length": _, ...rest } = back.headers;
        response.writeHead(200, rest).end(changed(html));
      });
    });
    onward.on("error", () => response.destroy());
    request.pipe(onward);
  }

  /** Keeps what was written to the folder, by its name there. */
  function keep(request, response) {
    let body = "";
    request.setEncoding("utf8");
    request.on("data", (text) => (body += text));
    request.on("end", () => {
      const [name, text] = JSON.parse(body);
      written.set(name.replace("/shop/", ""), text);
      response.writeHead(204).end();
    });
  }

  async function answer(pathname) {
    if (pathname === "/memory/records.json")
      return [MIME[".json"], JSON.stringify(records)];
    const [, place, ...rest] = decodeURIComponent(pathname).split("/");
    if (!Object.hasOwn(places, place) || rest.includes("..")) throw new Error();
    const file = path.join(places[place], ...rest);
    return [MIME[path.extname(file)] ?? "text/plain", await readFile(file)];
  }

  /** The workbench's page with what it is to load and open, in place of what it was given. */
  function changed(html) {
    const at = (place) => ({ scheme: "http", authority, path: place });
    const folder = { scheme: "thou-memory", authority: "", path: "/shop" };
    const more = {
      additionalBuiltinExtensions: [at("/extension"), at("/memory")],
      folderUri: folder,
      // nobody has said that they trust the folder, and nobody is asked
      enableWorkspaceTrust: true,
      configurationDefaults: {
        "security.workspace.trust.startupPrompt": "never",
      },
      ...(open === undefined
        ? {}
        : {
            defaultLayout: {
              editors: [{ uri: { ...folder, path: `/shop/${open}` } }],
              force: true,
            },
          }),
    };
    const setting =
      /(id="vscode-workbench-web-configuration" data-settings=")([^"]*)/;
    const [, , given] = setting.exec(html) ?? [];
    if (given === undefined) throw new Error("the page has no configuration");
    const all = { ...JSON.parse(given.replaceAll("&quot;", '"')), ...more };
    const text = JSON.stringify(all).replaceAll('"', "&quot;");
    return html.replace(setting, (_, before) => before + text);
  }

  return {
    authority,
    /** The page's address; the editor's server hands out its token there. */
    address: () => {
      const { search } = new URL(editor.address());
      const token = new URLSearchParams(search).get("tkn");
      return `http://${authority}/?tkn=${token}`;
    },
    asked,
    /** What was written to the folder since, by the name there. */
    written,
    close: () =>
      new Promise((resolve) => {
        server.close(resolve);
        for (const socket of sockets) socket.destroy();
      }),
  };
}
