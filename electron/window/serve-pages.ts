import { readRendererFile } from "../program/renderer-files.ts";
import { securityHeaders } from "../program/security-headers.ts";
import { isOwnPage } from "./own-pages.ts";

/** Answers the program's own scheme with files of the built screens, and with nothing else. */
export function servePages(rendererFolder: string): (request: Request) => Promise<Response> {
  return async (request) => {
    if (request.method !== "GET" || !isOwnPage(request.url)) return notFound();
    const file = await readRendererFile(rendererFolder, new URL(request.url).pathname);
    if (file === undefined) return notFound();
    return new Response(file.bytes, { headers: { ...securityHeaders, "content-type": file.mediaType } });
  };
}

function notFound(): Response {
  return new Response("", { status: 404, headers: { ...securityHeaders } });
}
