#pragma once

// Mutations that keep a text JSON: bytes changed at random seldom leave a pattern that can be read, so that
// what lies behind the reader would hardly be reached. To be included by one source of a fuzzer: it defines
// the function that libFuzzer asks for the next input.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <iterator>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <utility>
#include <vector>

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t max_size);

namespace dartwright::fuzzing {

// In the order of the file, so that an outline stays in its order and a change in one place leaves the
// others.
using Tree = nlohmann::ordered_json;

class TreeMutation {
  public:
    explicit TreeMutation(unsigned seed) : random_(seed) {}

    void change(Tree& tree) {
        nodes_.clear();
        collect(tree, "");
        if (nodes_.empty()) return;
        const Node node = nodes_[below(nodes_.size())];
        if (node.value->is_number())
            change_number(*node.value);
        else if (node.value->is_string())
            change_name(*node.value);
        else if (node.value->is_array())
            change_list(*node.value);
        else if (node.value->is_object())
            change_object(*node.value);
        else
            *node.value = !below(2);
    }

  private:
    struct Node {
        Tree* value;
        std::string key;
    };

    std::size_t below(std::size_t count) { return random_() % count; }

    void collect(Tree& tree, const std::string& key) {
        nodes_.push_back({&tree, key});
        if (tree.is_object()) {
            for (auto& [name, value] : tree.items()) collect(value, name);
        } else if (tree.is_array()) {
            for (Tree& value : tree) collect(value, key);
        }
    }

    // Another of the same kind in the text; the node itself if there is none.
    template <typename Fits>
    Tree another(const Tree& otherwise, Fits fits) {
        std::vector<const Tree*> like;
        for (const Node& node : nodes_) {
            if (fits(node)) like.push_back(node.value);
        }
        return like.empty() ? otherwise : *like[below(like.size())];
    }

    void change_number(Tree& number) {
        const double value = number.get<double>();
        static constexpr double odd[] = {0, 1, -1, 1e-9, 1e-3, 0.5, 10, 15, 1e5, 1e-300};
        switch (below(8)) {
            case 0:
                number = odd[below(std::size(odd))];
                break;
            case 1:
                number = -value;
                break;
            case 2:
                number = std::nextafter(value, below(2) ? 1e9 : -1e9);
                break;
            case 3:
                number = value + (double(below(2001)) - 1000) / 100;
                break;
            case 4:
                number = value * (below(2) ? 2.54 : 0.1);
                break;
            default:
                number = another(number, [](const Node& node) { return node.value->is_number(); });
        }
    }

    void change_name(Tree& name) {
        name = another(name, [](const Node& node) { return node.value->is_string(); });
    }

    void change_list(Tree& list) {
        if (list.empty()) return;
        const std::size_t at = below(list.size());
        switch (below(5)) {
            case 0:
                list.erase(list.begin() + std::ptrdiff_t(at));
                break;
            case 1: {
                const Tree twice = list[at];
                list.insert(list.begin() + std::ptrdiff_t(at), twice);
                break;
            }
            case 2:
                std::swap(list[at], list[below(list.size())]);
                break;
            case 3:
                std::rotate(list.begin(), list.begin() + std::ptrdiff_t(at), list.end());
                break;
            default:
                std::reverse(list.begin(), list.end());
        }
    }

    // A key is taken away, gets what stands under the same key elsewhere, or is one that another place may
    // have.
    void change_object(Tree& object) {
        if (!object.empty() && below(3) != 0) {
            auto at = std::next(object.begin(), std::ptrdiff_t(below(object.size())));
            const std::string key = at.key();
            if (below(3) == 0)
                object.erase(key);
            else
                object[key] = another(object[key], [&key](const Node& node) { return node.key == key; });
            return;
        }
        static const std::vector<std::pair<const char*, const char*>> may_stand{
            {"laid", "\"on each other\""},
            {"allowances_differ", "true"},
            {"second_fold", "\"hem\""},
            {"begins", "true"},
            {"worn", "\"right\""},
            {"side_up", "\"wrong\""},
            {"fullness", "10"},
            {"ease", "{\"side\": 2, \"amount\": 5}"},
            {"ends", "{\"start\": \"smooth\"}"},
            {"allowance", "{\"width\": 15}"},
            {"legs", "[[[1, 2], [3, 4]], [[5, 6], [7, 8]]]"},
            {"curve", "[[10, 20], [30, 40]]"},
            {"through", "[[10, 20]]"},
            {"back_off", "20"},
            {"press", "\"centre\""},
            {"kind", "\"double\""},
            {"quantity", "1"},
            {"fold", "\"centre\""},
            {"mirrored", "true"}};
        const auto& [key, value] = may_stand[below(may_stand.size())];
        object[key] = Tree::parse(value);
    }

    std::mt19937 random_;
    std::vector<Node> nodes_;
};

/// Half of the mutations are of bytes, as libFuzzer makes them with its dictionary.
inline std::size_t mutated(std::uint8_t* data, std::size_t size, std::size_t max_size, unsigned seed) {
    if (seed % 4 == 0) return LLVMFuzzerMutate(data, size, max_size);
    Tree tree = Tree::parse(data, data + size, nullptr, false);
    if (tree.is_discarded()) return LLVMFuzzerMutate(data, size, max_size);
    TreeMutation mutation(seed);
    for (unsigned i = 0; i < 1 + seed / 4 % 3; ++i) mutation.change(tree);
    const std::string text = tree.dump(-1, ' ', false, Tree::error_handler_t::replace);
    if (text.size() > max_size) return LLVMFuzzerMutate(data, size, max_size);
    std::memcpy(data, text.data(), text.size());
    return text.size();
}

}  // namespace dartwright::fuzzing

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t max_size,
                                               unsigned seed) {
    return dartwright::fuzzing::mutated(data, size, max_size, seed);
}
