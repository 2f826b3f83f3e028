#pragma once

#include <QAbstractButton>

namespace jw {

/// Heading that folds and unfolds what is below it: an arrow, a title, and a remark in a lighter
/// tone, to the right of the title or, for a card, on a second line. Space and Enter turn it, Left
/// folds, Right unfolds.
class FoldHeader : public QAbstractButton {
  Q_OBJECT

 public:
  enum class Remark { Beside, Below };

  FoldHeader(const QString& title, Remark place, QWidget* parent = nullptr);

  void setTitle(const QString& title);
  void setRemark(const QString& remark);
  const QString& remark() const { return remark_; }

  /// Marks that something inside needs attention; the mark is a square as in the verdicts.
  void setWrong(bool wrong);
  bool isWrong() const { return wrong_; }

  /// A lesser heading, inside a form: smaller and in a lighter tone.
  void setQuiet(bool quiet);

  /// Keeps [px] free at the right end of the first line, for buttons that stand there.
  void keepFree(int pixels) { free_ = pixels; }

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void paintArrow(QPainter& painter) const;
  void paintTexts(QPainter& painter) const;
  void speak();
  QString titleText() const;
  QFont headingFont() const;
  int topPadding() const;

  QString remark_;
  Remark place_;
  int free_ = 0;
  bool wrong_ = false;
  bool quiet_ = false;
};

}  // namespace jw
