namespace InscriptionLab.References;

/// <summary>
/// Canonical compositions of Latin letters and the order of combining marks, from the Unicode Character Database
/// (UnicodeData.txt 14.0, fields Decomposition_Mapping and Canonical_Combining_Class).
/// </summary>
internal static class LatinCompositions
{
    /// <summary>Gets, for each combining mark, pairs of characters: the letter without the mark, then the letter with it.</summary>
    internal static (char Mark, string Pairs)[] Rows { get; } =
    [
        ('\u0300', "AÀEÈIÌOÒUÙaàeèiìoòuùÜǛüǜNǸnǹĒḔēḕŌṐōṑWẀwẁÂẦâầĂẰăằÊỀêềÔỒôồƠỜơờƯỪưừYỲyỳ"),
        ('\u0301', "AÁEÉIÍOÓUÚYÝaáeéiíoóuúyýCĆcćLĹlĺNŃnńRŔrŕSŚsśZŹzźÜǗüǘGǴgǵÅǺåǻÆǼæǽØǾøǿÇḈçḉĒḖēḗÏḮïḯKḰkḱMḾmḿÕṌõṍŌṒōṓPṔpṕŨṸũṹWẂwẃÂẤâấĂẮăắÊẾêếÔỐôốƠỚơớƯỨưứ"),
        ('\u0302', "AÂEÊIÎOÔUÛaâeêiîoôuûCĈcĉGĜgĝHĤhĥJĴjĵSŜsŝWŴwŵYŶyŷZẐzẑẠẬạậẸỆẹệỌỘọộ"),
        ('\u0303', "AÃNÑOÕaãnñoõIĨiĩUŨuũVṼvṽÂẪâẫĂẴăẵEẼeẽÊỄêễÔỖôỗƠỠơỡƯỮưữYỸyỹ"),
        ('\u0304', "AĀaāEĒeēIĪiīOŌoōUŪuūÜǕüǖÄǞäǟȦǠȧǡÆǢæǣǪǬǫǭÖȪöȫÕȬõȭȮȰȯȱYȲyȳGḠgḡḶḸḷḹṚṜṛṝ"),
        ('\u0306', "AĂaăEĔeĕGĞgğIĬiĭOŎoŏUŬuŭȨḜȩḝẠẶạặ"),
        ('\u0307', "CĊcċEĖeėGĠgġIİZŻzżAȦaȧOȮoȯBḂbḃDḊdḋFḞfḟHḢhḣMṀmṁNṄnṅPṖpṗRṘrṙSṠsṡŚṤśṥŠṦšṧṢṨṣṩTṪtṫWẆwẇXẊxẋYẎyẏſẛ"),
        ('\u0308', "AÄEËIÏOÖUÜaäeëiïoöuüyÿYŸHḦhḧÕṎõṏŪṺūṻWẄwẅXẌxẍtẗ"),
        ('\u0309', "AẢaảÂẨâẩĂẲăẳEẺeẻÊỂêểIỈiỉOỎoỏÔỔôổƠỞơởUỦuủƯỬưửYỶyỷ"),
        ('\u030A', "AÅaåUŮuůwẘyẙ"),
        ('\u030B', "OŐoőUŰuű"),
        ('\u030C', "CČcčDĎdďEĚeěLĽlľNŇnňRŘrřSŠsšTŤtťZŽzžAǍaǎIǏiǐOǑoǒUǓuǔÜǙüǚGǦgǧKǨkǩƷǮʒǯjǰHȞhȟ"),
        ('\u030F', "AȀaȁEȄeȅIȈiȉOȌoȍRȐrȑUȔuȕ"),
        ('\u0311', "AȂaȃEȆeȇIȊiȋOȎoȏRȒrȓUȖuȗ"),
        ('\u031B', "OƠoơUƯuư"),
        ('\u0323', "BḄbḅDḌdḍHḤhḥKḲkḳLḶlḷMṂmṃNṆnṇRṚrṛSṢsṣTṬtṭVṾvṿWẈwẉZẒzẓAẠaạEẸeẹIỊiịOỌoọƠỢơợUỤuụƯỰưựYỴyỵ"),
        ('\u0324', "UṲuṳ"),
        ('\u0325', "AḀaḁ"),
        ('\u0326', "SȘsșTȚtț"),
        ('\u0327', "CÇcçGĢgģKĶkķLĻlļNŅnņRŖrŗSŞsşTŢtţEȨeȩDḐdḑHḨhḩ"),
        ('\u0328', "AĄaąEĘeęIĮiįUŲuųOǪoǫ"),
        ('\u032D', "DḒdḓEḘeḙLḼlḽNṊnṋTṰtṱUṶuṷ"),
        ('\u032E', "HḪhḫ"),
        ('\u0330', "EḚeḛIḬiḭUṴuṵ"),
        ('\u0331', "BḆbḇDḎdḏKḴkḵLḺlḻNṈnṉRṞrṟTṮtṯZẔzẕhẖ"),
    ];

    /// <summary>Gets the last mark of each run of equal combining classes from U+0300 to U+036F.</summary>
    internal static (char Last, int Class)[] ClassRuns { get; } =
    [
        ('\u0314', 230), ('\u0315', 232), ('\u0319', 220), ('\u031A', 232), ('\u031B', 216),
        ('\u0320', 220), ('\u0322', 202), ('\u0326', 220), ('\u0328', 202), ('\u0333', 220),
        ('\u0338', 1), ('\u033C', 220), ('\u0344', 230), ('\u0345', 240), ('\u0346', 230),
        ('\u0349', 220), ('\u034C', 230), ('\u034E', 220), ('\u034F', 0), ('\u0352', 230),
        ('\u0356', 220), ('\u0357', 230), ('\u0358', 232), ('\u035A', 220), ('\u035B', 230),
        ('\u035C', 233), ('\u035E', 234), ('\u035F', 233), ('\u0361', 234), ('\u0362', 233),
        ('\u036F', 230),
    ];
}
