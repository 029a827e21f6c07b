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

// A hostile word as long as a file is not worth comparing to its end.
constexpr std::size_t longest_compared = 200;

std::string nearest_word(const std::string& word, const std::vector<std::string>& known) {
    if (known.empty()) throw std::invalid_argument("nearest_word: no words to choose from");
    const std::string start = word.substr(0, longest_compared);
    return *std::min_element(known.begin(), known.end(), [&](const auto& a, const auto& b) {
        return letters_apart(start, a) < letters_apart(start, b);
    });
}

std::string nearest_told(const std::string& word, const std::vector<std::string>& known) {
    constexpr std::size_t least_begun = 2;
    const auto told = [](const std::string& near) { return "; the nearest is " + near; };
    if (word.size() >= least_begun) {
        const auto begun = std::find_if(known.begin(), known.end(),
                                        [&](const std::string& each) { return each.rfind(word, 0) == 0; });
        if (begun != known.end()) return told(*begun);
        const auto begins = std::find_if(known.begin(), known.end(), [&](const std::string& each) {
            return each.size() > least_begun && word.rfind(each, 0) == 0;
        });
        if (begins != known.end() && word.size() <= 2 * begins->size()) return told(*begins);
    }
    if (word.empty() || word.size() > longest_compared || known.empty()) return {};
    const std::string near = nearest_word(word, known);
    const std::size_t allowed = std::max<std::size_t>(1, std::max(word.size(), near.size()) / 3);
    return letters_apart(word, near) <= allowed ? told(near) : "";
}

}  // namespace dartwright
