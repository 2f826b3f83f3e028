#pragma once

#include <memory>
#include <string>

#include <gtest/gtest.h>
#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QTemporaryDir>
#include <QtTest>

#include "app/main_window.h"
#include "core/model/field_catalogue.h"

namespace jw::test {

/// Answers the window's questions and counts them.
class Answers : public Prompts {
 public:
  Unsaved askUnsaved(QWidget*, const QString&) override {
    ++unsavedAsked;
    return unsaved;
  }
  bool askRecover(QWidget*, const QString&) override {
    ++recoverAsked;
    return recover;
  }
  bool askOverwriteChanged(QWidget*, const QString&) override {
    ++overwriteAsked;
    return overwrite;
  }
  bool askRemove(QWidget*, const QString&) override { return true; }
  QString askOpenFile(QWidget*, const QString&) override { return file; }
  QString askTableFile(QWidget*, const QString&) override { return file; }
  QString askLogFile(QWidget*, const QString&) override { return file; }
  QString askSaveFile(QWidget*, const QString&) override { return file; }
  QString askFigureFile(QWidget*, const QString&) override { return file; }
  QString askFolder(QWidget*, const QString&) override { return file; }
  QString askName(QWidget*, const QString&, const QString&) override { return file; }

  Unsaved unsaved = Unsaved::Cancel;
  bool recover = false;
  bool overwrite = false;
  QString file;
  int unsavedAsked = 0;
  int recoverAsked = 0;
  int overwriteAsked = 0;
};

inline QStringList samples() {
  const QDir folder(JW_SAMPLES_DIR);
  QStringList files;
  for (const QString& name : folder.entryList({"*.jointwright"}, QDir::Files, QDir::Name)) {
    files << folder.filePath(name);
  }
  return files;
}

inline QByteArray contentOf(const QString& fileName) {
  QFile file(fileName);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray("(missing)");
}

inline void putContent(const QString& fileName, const QByteArray& bytes) {
  QFile file(fileName);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  ASSERT_EQ(file.write(bytes), bytes.size());
}

/// The window on the screen with a folder for its files.
class WindowTest : public testing::Test {
 protected:
  WindowTest() : window(std::make_unique<MainWindow>(answers)) {
    window->show();
    window->activateWindow();
    (void)QTest::qWaitForWindowActive(window.get());
  }

  /// A copy of the first sample in the test's folder.
  QString copyOfSample(const QString& name = "arm.jointwright") {
    const QString file = folder.filePath(name);
    QFile::copy(samples().value(0), file);
    QFile::setPermissions(file, QFile::ReadOwner | QFile::WriteOwner);
    return file;
  }

  QString openSampleCopy() {
    const QString file = copyOfSample();
    EXPECT_TRUE(window->session().open(file));
    settle();
    return file;
  }

  /// Waits until what is on screen is evaluated.
  void settle() {
    ASSERT_TRUE(QTest::qWaitFor([&] { return document().isEvaluated(); }, 10'000));
  }

  Document& document() { return window->document(); }

  double number(const char* path) { return findField(*document().project(), path)->number(); }

  /// Types over the field's text key by key, without leaving it.
  void type(const char* path, const QString& text) {
    window->inputs().reveal(path);
    auto* editor = window->findChild<QLineEdit*>(path);
    ASSERT_NE(editor, nullptr) << path;
    editor->setFocus();
    editor->selectAll();
    QTest::keyClicks(editor, text);
  }

  /// Types and takes over with Enter.
  void enter(const char* path, const QString& text) {
    type(path, text);
    QTest::keyClick(window->findChild<QLineEdit*>(path), Qt::Key_Return);
    settle();
  }

  void trigger(const char* action) {
    auto* found = window->findChild<QAction*>(action);
    ASSERT_NE(found, nullptr) << action;
    found->trigger();
  }

  /// The check as it stands in the evaluation on screen.
  const Check& check(const std::string& id, int stage = -1) {
    for (const Check& found : document().snapshot().evaluation->checks) {
      if (found.id == id && found.stage == stage) return found;
    }
    throw std::runtime_error("no check " + id);
  }

  Answers answers;
  QTemporaryDir folder;
  std::unique_ptr<MainWindow> window;
};

}  // namespace jw::test
