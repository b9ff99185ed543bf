-- What run.mjs has Neovim do with a record: each line that it writes is a name and what was found.
local function tell(name, found)
  io.stdout:write(name .. ": " .. found:gsub("\n", " ") .. "\n")
end
vim.wait(30000, function() return #vim.diagnostic.get(0) > 0 end, 50)
for _, each in ipairs(vim.diagnostic.get(0)) do
  tell("finding", vim.fn.getline(each.lnum + 1) .. " | " .. each.message)
end
local function params(pattern)
  local line = vim.fn.search(pattern)
  return {
    textDocument = vim.lsp.util.make_text_document_params(),
    position = { line = line - 1, character = #vim.fn.matchstr(vim.fn.getline(line), pattern) - 1 },
  }
end
for _, answer in pairs(vim.lsp.buf_request_sync(0, "textDocument/hover", params("^fit f"), 10000)) do
  tell("hover", answer.result.contents.value)
end
for _, answer in pairs(vim.lsp.buf_request_sync(0, "textDocument/definition", params("^ .* with m"), 10000)) do
  tell("definition", answer.result[1].targetUri or answer.result[1].uri)
end
local line = vim.fn.search("^job ")
vim.api.nvim_buf_set_lines(0, line, line, false, { '    note    "x"' })
vim.lsp.buf.formatting_sync(nil, 10000)
tell("layout", vim.fn.getline(line + 1) .. "|")
vim.cmd("qa!")
