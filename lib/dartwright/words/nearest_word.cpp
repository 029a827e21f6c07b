#include "dartwright/words/nearest_word.hpp"

#include <algorithm>
#include <stdexcept>

namespace dartwright {

std::size_t letters_apart(const std::string& a, const std::string& b) {
    std::vector<std::vector<std::size_t>> apart(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i) apart[i][0] = i;
    for (std::size_t j = 0; j <= b.size(); ++j) apart[0][j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
            std::size_t least =
                std::min({apart[i - 1][j] + 1, apart[i][j - 1] + 1, apart[i - 1][j - 1] + change});
            const bool is_swap = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (is_swap) least = std::min(least, apart[i - 2][j - 2] + 1);
            apart[i][j] = least;
        }
    }
    return apart[a.size()][b.size()];
}

std::string nearest_word(const std::string& word, const std::vector<std::string>& known) {
    if (known.empty()) throw std::invalid_argument("nearest_word: no words to choose from");
    // A hostile word as long as a file is not worth comparing to its end.
    const std::string start = word.substr(0, 200);
    return *std::min_element(known.begin(), known.end(), [&](const auto& a, const auto& b) {
        return letters_apart(start, a) < letters_apart(start, b);
    });
}

}  // namespace dartwright
