// Where addresses lie, and which folder of the workspace they belong to.
import { expect, test } from "vitest";
import { createPlaces } from "../../server/lsp/places.ts";

test("a file belongs to the innermost folder of the workspace that holds it, else to the one it lies in", () => {
  const places = createPlaces();
  places.setFolders(["file:///shop/", "file:///shop/old", "file:///other"]);
  expect(places.folders()).toEqual([
    "file:///shop",
    "file:///shop/old",
    "file:///other",
  ]);
  expect(places.homeOf("file:///shop/jobs/a.thou")).toBe("file:///shop");
  expect(places.homeOf("file:///shop/old/a.thou")).toBe("file:///shop/old");
  expect(places.homeOf("file:///shop/older/a.thou")).toBe("file:///shop");
  expect(places.homeOf("file:///elsewhere/b/a.thou")).toBe(
    "file:///elsewhere/b",
  );
});

test("one that was never saved lies in the first folder, or where it says that it will be saved", () => {
  const places = createPlaces();
  expect(places.pathOf("untitled:Untitled-1")).toBe("untitled:///Untitled-1");
  places.setFolders(["file:///shop", "file:///other"]);
  expect(places.pathOf("untitled:Untitled-1")).toBe("file:///shop/Untitled-1");
  expect(places.pathOf("untitled:/other/new.thou")).toBe(
    "file:///other/new.thou",
  );
  places.setFolders(["file:///other"]);
  expect(places.pathOf("untitled:Untitled-1")).toBe("file:///other/Untitled-1");
});
