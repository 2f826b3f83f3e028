#include "app/help_dialog.h"

#include <QCoreApplication>
#include <QDialog>
#include <QLineEdit>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "app/fields_report.h"
#include "core/checks/cautions.h"

namespace jw {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Help", text); }

QString title(HelpPage page) {
  switch (page) {
    case HelpPage::Fields: return tr("Fields");
    case HelpPage::Shortcuts: return tr("Shortcuts");
    case HelpPage::Cautions: return tr("Cautions");
    case HelpPage::About: break;
  }
  return tr("About Jointwright");
}

struct Shortcut {
  const char* keys;
  const char* what;
};

constexpr Shortcut kShortcuts[] = {
    {"Ctrl+N, Ctrl+O, Ctrl+S, Ctrl+Shift+S", "New, open, save, save as"},
    {"Ctrl+Z, Ctrl+Shift+Z or Ctrl+Y", "Undo, redo, also while typing"},
    {"Tab, Shift+Tab", "Next and previous field"},
    {"Up, Down; mouse wheel on the focused field", "Nudge a number; one step to undo"},
    {"Enter, Esc", "Take over an entry; take it back"},
    {"Ctrl+1 to Ctrl+9, Ctrl+T", "The figures as their tabs stand, two figures"},
    {"Left, Right, Home, End on a figure", "Move the cursor in time; with Shift faster"},
    {"+, −, 0 on a figure", "Zoom in, out, show all"},
    {"Ctrl+L", "Measured log; plus, minus, left, right and Home move along its curves"},
    {"Ctrl+Shift+C, Ctrl+E, Ctrl+Shift+E", "Copy figure, export figure, export the review"},
    {"F1, Ctrl+Q", "Fields, quit"},
};

QString shortcutsHtml() {
  QString html = "<table cellspacing=\"0\" cellpadding=\"5\">";
  for (const Shortcut& shortcut : kShortcuts) {
    html +=
        QString("<tr><td><b>%1</b></td><td>%2</td></tr>").arg(tr(shortcut.keys), tr(shortcut.what));
  }
  return html + "</table>";
}

QString cautionsHtml() {
  QString html;
  for (const std::string_view caution : kCautions) {
    html += "<p>" + QString::fromUtf8(caution.data(), qsizetype(caution.size())).toHtmlEscaped() +
            "</p>";
  }
  return html;
}

QString aboutHtml() {
  return QString("<h2>Jointwright %1</h2><p>%2</p><p>%3</p><p>%4</p>")
      .arg(
          JW_VERSION,
          tr("Shapes the actuator of one robot joint and says whether it will do the job."),
          tr("Free software under the GNU General Public License, version 3 or later. It comes "
             "without any warranty."),
          tr("Built with Qt %1 (LGPL 3), QCustomPlot (GPL 3), Eigen (MPL 2), nlohmann-json (MIT), "
             "fmt (MIT), fast_float (MIT or Apache 2), UDUNITS-2 (UCAR), Boost (BSL 1), urdfdom (BSD "
             "3-clause), Orocos KDL (LGPL 2.1), CLI11 (BSD "
             "3-clause), expected (CC0) and the Inter typeface (OFL 1.1).")
              .arg(QT_VERSION_STR));
}

/// A line above the text that finds words in it.
QLineEdit* makeSearch(QTextBrowser* text, QWidget* parent) {
  auto* search = new QLineEdit(parent);
  search->setPlaceholderText(tr("Find"));
  search->setAccessibleName(tr("Find in this page"));
  search->setClearButtonEnabled(true);
  const auto find = [=] {
    if (text->find(search->text())) return;
    text->moveCursor(QTextCursor::Start);
    text->find(search->text());
  };
  QObject::connect(search, &QLineEdit::textChanged, text, [=] {
    text->moveCursor(QTextCursor::Start);
    find();
  });
  QObject::connect(search, &QLineEdit::returnPressed, text, find);
  return search;
}

}  // namespace

QString helpHtml(HelpPage page) {
  switch (page) {
    case HelpPage::Fields: return QString::fromStdString(fieldsHtml());
    case HelpPage::Shortcuts: return shortcutsHtml();
    case HelpPage::Cautions: return cautionsHtml();
    case HelpPage::About: break;
  }
  return aboutHtml();
}

void showHelp(HelpPage page, QWidget* parent) {
  auto* dialog = new QDialog(parent);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setObjectName("help");
  dialog->setWindowTitle(title(page));
  auto* text = new QTextBrowser(dialog);
  text->setObjectName("help.text");
  text->setAccessibleName(title(page));
  text->setHtml(helpHtml(page));
  auto* column = new QVBoxLayout(dialog);
  column->setContentsMargins(16, 16, 16, 16);
  if (page == HelpPage::Fields) column->addWidget(makeSearch(text, dialog));
  column->addWidget(text);
  dialog->resize(page == HelpPage::Fields ? QSize(900, 640) : QSize(560, 420));
  dialog->show();
}

}  // namespace jw
