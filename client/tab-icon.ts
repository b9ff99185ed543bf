// The icon on the tab of a panel of ours, as it stands on the tab of a record.
import * as vscode from "vscode";

export function tabIcon(extension: vscode.Uri): {
  readonly light: vscode.Uri;
  readonly dark: vscode.Uri;
} {
  const icons = vscode.Uri.joinPath(extension, "client", "icons");
  return {
    light: vscode.Uri.joinPath(icons, "file-light.svg"),
    dark: vscode.Uri.joinPath(icons, "file-dark.svg"),
  };
}
