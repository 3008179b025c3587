// Keeps one version of the page, whole or not at all, so that it opens without a network. The build writes the list:
// the name of every file and its SHA-256. A newer version waits until the page asks for it.
"use strict";

const FILES = {};
const SCOPE = self.registration.scope;
const CACHE = `${SCOPE} ${Object.values(FILES).join("").replace(/(.{8}).{56}/g, "$1")}`;

const hex = (bytes) => Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, "0")).join("");

// Fetches a file of this version; a host that sends another one is in the middle of a change.
const fetched = async (name, hash) => {
  // a host may send index.html elsewhere, and what was sent elsewhere opens no page
  const address = name === "index.html" ? "./" : name;
  const response = await fetch(address, { cache: "no-cache" });
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  const bytes = await response.arrayBuffer();
  if (hex(await crypto.subtle.digest("SHA-256", bytes)) !== hash) throw new Error(`${name} is of another version`);
  const headers = new Headers();
  for (const key of ["content-type", "content-security-policy"]) {
    const value = response.headers.get(key);
    if (value) headers.set(key, value);
  }
  return [new URL(address, SCOPE).href, new Response(bytes, { headers })];
};

const keep = async () => {
  const all = await Promise.all(Object.entries(FILES).map(([name, hash]) => fetched(name, hash)));
  const cache = await caches.open(CACHE);
  await Promise.all(all.map(([address, response]) => cache.put(address, response)));
};

const forget = async () => {
  const names = await caches.keys();
  const former = names.filter((name) => name.startsWith(`${SCOPE} `) && name !== CACHE);
  await Promise.all(former.map((name) => caches.delete(name)));
};

self.addEventListener("install", (event) => event.waitUntil(keep()));
self.addEventListener("activate", (event) => event.waitUntil(forget()));
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const address = new URL(event.request.url);
  const under = address.origin + address.pathname;
  if (event.request.method !== "GET" || !under.startsWith(SCOPE)) return;
  const name = under.slice(SCOPE.length);
  // the sign before a link's code, as some mail programs write it
  const code = name.match(/^%(?:25)?23(.*)$/);
  if (code) {
    event.respondWith(Response.redirect(`${SCOPE}#${code[1]}`));
  } else if (name === "" || name in FILES) {
    const kept = new URL(name === "index.html" ? "./" : name, SCOPE).href;
    event.respondWith(
      caches.open(CACHE).then(async (cache) => (await cache.match(kept)) ?? fetch(event.request)),
    );
  }
});
