// Loaded before the C library into the program under test: sets a locale, for C and for C++, that writes
// 1.234,5 as a program may that has the library in it. LOCPATH is the folder of the locale `comma`.

#include <clocale>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <locale>
#include <sstream>

namespace {

class Commas : public std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

const bool is_set = [] {
    std::locale::global(std::locale(std::locale::classic(), new Commas));
    // After it, since it may set that of C too.
    std::setlocale(LC_NUMERIC, "comma");
    char text[16];
    std::snprintf(text, sizeof text, "%.1f", 1.5);
    std::ostringstream stream;
    stream << 1234.5;
    if (std::strcmp(text, "1,5") != 0 || stream.str() != "1.234,5") std::abort();
    return true;
}();

}  // namespace
