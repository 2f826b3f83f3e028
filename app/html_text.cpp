#include "app/html_text.h"

#include "widgets/theme/symbol_text.h"

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

std::string htmlSymbol(std::string_view notation) {
  return symbolHtml(QString::fromUtf8(notation.data(), static_cast<qsizetype>(notation.size())))
      .toStdString();
}

}  // namespace jw
