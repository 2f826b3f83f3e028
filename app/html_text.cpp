#include "app/html_text.h"

namespace jw {

std::string htmlText(std::string_view text) {
  std::string html;
  html.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&': html += "&amp;"; break;
      case '<': html += "&lt;"; break;
      case '>': html += "&gt;"; break;
      case '"': html += "&quot;"; break;
      case '\n': html += "<br/>"; break;
      default: html += c;
    }
  }
  return html;
}

std::string htmlSymbol(std::string_view symbol) {
  const auto mark = symbol.find('_');
  if (mark == std::string_view::npos) return htmlText(symbol);
  return htmlText(symbol.substr(0, mark)) + "<sub>" + htmlText(symbol.substr(mark + 1)) + "</sub>";
}

}  // namespace jw
