#pragma once

#include <QString>

class QWidget;

namespace jw {

enum class HelpPage { Fields, Shortcuts, Cautions, About };

/// The page as HTML.
QString helpHtml(HelpPage page);

/// Shows the page in a window of its own beside the main one.
void showHelp(HelpPage page, QWidget* parent);

}  // namespace jw
