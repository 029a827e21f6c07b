#include "dartwright/drawing/text_column.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/drawing/text_box.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

const std::string dots = "\xE2\x80\xA6";

// As many whole letters stay as there is room for; with one more it would be too wide.
RC_GTEST_PROP(Shortened, KeepsWhatThereIsRoomFor, ()) {
    std::vector<std::string> letters;
    const int count = *testing::evenly(0, 80);
    for (int k = 0; k < count; ++k)
        letters.push_back(
            *rc::gen::element<std::string>("a", "W", "i", " ", "é", "ß", "が", "Ж", "\U0001D11E"));
    std::string words;
    for (const std::string& letter : letters) words += letter;
    const double size_mm = *testing::evenly(2, 9);
    const double width_mm = *testing::evenly(1, 200);
    const bool is_bold = *rc::gen::arbitrary<bool>();
    const std::string shown = shortened(words, size_mm, width_mm, is_bold);
    RC_CLASSIFY(shown != words, "shortened");
    if (shown == words) {
        RC_ASSERT(text_width(words, size_mm, is_bold) <= width_mm);
        return;
    }
    std::string kept;
    std::size_t fitting = 0;
    for (std::size_t k = 0; k < letters.size(); ++k) {
        if (kept + dots == shown) break;
        kept += letters[k];
        ++fitting;
    }
    RC_ASSERT(kept + dots == shown);
    RC_ASSERT(fitting < letters.size());
    if (fitting > 0) RC_ASSERT(text_width(shown, size_mm, is_bold) <= width_mm);
    RC_ASSERT(text_width(kept + letters[fitting] + dots, size_mm, is_bold) > width_mm);
}

}  // namespace
}  // namespace dartwright
